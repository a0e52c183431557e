#pragma once

#include <string>
#include <string_view>
#include <wx/string.h>

namespace lowledger::window {

inline wxString shown(std::string_view utf8) {
    return wxString::FromUTF8(utf8.data(), utf8.size());
}

inline std::string utf8(const wxString& text) {
    return text.utf8_string();
}

/// For labels, where `&` would make a mnemonic.
inline wxString shown_in_label(std::string_view utf8) {
    wxString text = shown(utf8);
    text.Replace("&", "&&");
    return text;
}

}  // namespace lowledger::window
