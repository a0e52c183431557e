#pragma once

#include <optional>
#include <string>

#include "model/studio/date.h"
#include "model/studio/ids.h"

namespace lowledger::studio {

/// Whom to call about a student. All free text, may be empty.
struct Guardian {
    std::string name{};
    std::string phone{};
    std::string e_mail{};
    bool operator==(const Guardian&) const = default;
};

/// What a student can practise on at home.
enum class AtHome { horn, mouthpiece_only, nothing };

/// Something that happened to a student and matters to playing.
struct StudentEvent {
    StudentEventId id;
    StudentId student;
    Date on;
    enum class Kind { braces_on, braces_off, teeth, growth, illness, other } kind = Kind::other;
    /// Never printed.
    std::string remarks{};
    bool operator==(const StudentEvent&) const = default;
};

/// A piece that a student works on.
struct Piece {
    PieceId id;
    StudentId student;
    std::string title;
    /// Free text, may be empty.
    std::string composer{};
    std::string part{};
    Date from;
    /// The first day it is no longer worked on; empty: still.
    std::optional<Date> until{};
    std::string remarks{};
    bool operator==(const Piece&) const = default;
};

}  // namespace lowledger::studio
