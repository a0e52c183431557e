#include "app/desk/manual.h"

#include <cmark.h>
#include <memory>
#include <stdexcept>

#include "app/desk/action.h"
#include "app/desk/desk.h"
#include "app/desk/places.h"

#include "manual_text.h"

namespace lowledger::desk {
namespace {

using Look = ManualRun::Look;

/// Walks the parsed text once and writes it as parts.
class Writer {
  public:
    void take(cmark_node* node, bool entering) {
        switch (cmark_node_get_type(node)) {
            case CMARK_NODE_HEADING:
                entering ? begin_heading(node) : end_heading();
                break;
            case CMARK_NODE_PARAGRAPH:
                if (!entering) add(in_item(node) ? "\n" : "\n\n");
                break;
            case CMARK_NODE_LIST:
                entering ? begin_list(node) : end_list();
                break;
            case CMARK_NODE_ITEM:
                if (entering) begin_item();
                break;
            case CMARK_NODE_STRONG:
                look_ = entering ? Look::strong : Look::text;
                break;
            case CMARK_NODE_IMAGE:
                in_image_ = entering;
                break;
            case CMARK_NODE_CODE:
                add_in(Look::code, literal(node));
                break;
            case CMARK_NODE_CODE_BLOCK:
                add_in(Look::code, literal(node) + "\n");
                break;
            case CMARK_NODE_TEXT:
                add(literal(node));
                break;
            case CMARK_NODE_SOFTBREAK:
                add(" ");
                break;
            case CMARK_NODE_LINEBREAK:
                add("\n");
                break;
            default:
                break;
        }
    }
    std::vector<ManualPart> parts() && { return std::move(parts_); }

  private:
    static std::string literal(cmark_node* node) {
        const char* text = cmark_node_get_literal(node);
        return text == nullptr ? std::string() : std::string(text);
    }
    static bool in_item(cmark_node* paragraph) {
        return cmark_node_get_type(cmark_node_parent(paragraph)) == CMARK_NODE_ITEM;
    }
    void begin_heading(cmark_node* node) {
        in_title_ = cmark_node_get_heading_level(node) <= 2;
        if (in_title_)
            parts_.emplace_back();
        else
            look_ = Look::heading;
    }
    void end_heading() {
        if (!in_title_) add("\n");
        in_title_ = false;
        look_ = Look::text;
    }
    void begin_list(cmark_node* node) {
        number_ = cmark_node_get_list_type(node) == CMARK_ORDERED_LIST ? cmark_node_get_list_start(node) : 0;
    }
    void end_list() {
        add("\n");
        number_ = 0;
    }
    void begin_item() { add(number_ > 0 ? std::to_string(number_++) + ". " : "\u2022 "); }

    void add(const std::string& text) { add_in(look_, text); }
    void add_in(Look look, const std::string& text) {
        if (in_image_ || parts_.empty()) return;
        if (in_title_) {
            parts_.back().title += text;
            return;
        }
        auto& runs = parts_.back().runs;
        // The break after a picture that stood alone.
        if (runs.empty() && text.find_first_not_of('\n') == std::string::npos) return;
        if (!runs.empty() && runs.back().look == look)
            runs.back().text += text;
        else
            runs.push_back({look, text});
    }

    std::vector<ManualPart> parts_;
    Look look_ = Look::text;
    bool in_title_ = false;
    bool in_image_ = false;
    int number_ = 0;
};

/// One line an action that has a key: the key, and what it does as the menu says it.
ManualPart keys(std::string title) {
    ManualPart part{std::move(title), {}};
    for (const auto& action : actions()) {
        if (action.key.empty()) continue;
        std::string text(action.text);
        std::erase(text, '&');
        part.runs.push_back({Look::code, std::string(action.key)});
        part.runs.push_back({Look::text, "  " + text + "\n"});
    }
    return part;
}

}  // namespace

std::vector<ManualPart> manual_parts(std::string_view common_mark) {
    const std::unique_ptr<cmark_node, decltype(&cmark_node_free)> document(
        cmark_parse_document(common_mark.data(), common_mark.size(), CMARK_OPT_DEFAULT), cmark_node_free);
    const std::unique_ptr<cmark_iter, decltype(&cmark_iter_free)> walk(cmark_iter_new(document.get()),
                                                                       cmark_iter_free);
    Writer writer;
    for (auto event = cmark_iter_next(walk.get()); event != CMARK_EVENT_DONE;
         event = cmark_iter_next(walk.get()))
        writer.take(cmark_iter_get_node(walk.get()), event == CMARK_EVENT_ENTER);
    return std::move(writer).parts();
}

const std::vector<ManualPart>& manual() {
    static const std::vector<ManualPart> parts = [] {
        auto made = manual_parts(manual_text().front().text);
        if (made.empty()) throw std::logic_error("the manual has no heading");
        made.back() = keys(made.back().title);
        return made;
    }();
    return parts;
}

std::string_view manual_title_for(const Desk& desk) {
    if (!desk.has_studio()) return "Begin";
    if (desk.view().place == Place::horns) {
        const Section section = section_of(desk.view());
        return section == Section::loans || section == Section::upkeep ? "Loans and upkeep" : "Horns";
    }
    if (desk.view().place == Place::routines) return "Routines";
    if (!desk.student()) return "Begin";
    if (section_of(desk.view()) == Section::routines) return "Routines";
    return section_of(desk.view()) == Section::settings ? "Settings" : "A tuning sheet, in two minutes";
}

}  // namespace lowledger::desk
