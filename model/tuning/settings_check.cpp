#include "model/tuning/settings_check.h"

#include <cmath>
#include <fmt/format.h>

#include "model/units/refusal.h"

namespace lowledger::tuning {
namespace {

template <typename... Parts>
[[noreturn]] void refuse(fmt::format_string<Parts...> sentence, Parts&&... parts) {
    throw units::Refusal(fmt::format(sentence, std::forward<Parts>(parts)...));
}

void check(const QuestionSlide& slide) {
    const double now = slide.now.value();
    const double least = slide.least.value();
    const double travel = slide.travel.value();
    if (!std::isfinite(now) || !std::isfinite(least) || !std::isfinite(travel)) {
        refuse("The {} slide has a position or limit that is no number; give millimetres.", slide.slide);
    }
    if (least < 0.0) {
        refuse("The {} slide has a least of {:g} mm; a slide cannot stand further in than 0.", slide.slide,
               least);
    }
    if (least > travel) {
        refuse(
            "The {} slide has a least of {:g} mm, which is more than its travel of {:g} mm; correct one of "
            "them.",
            slide.slide, least, travel);
    }
    if (now < 0.0 || now > travel) {
        refuse(
            "The {} slide stands at {:g} mm, but it goes from 0 to {:g} mm; measure it again or correct its "
            "travel.",
            slide.slide, now, travel);
    }
}

void check(const QuestionNote& note) {
    const std::string name = units::file_name(note.note);
    if (!std::isfinite(note.weight) || note.weight < 0.0) {
        refuse("The weight of {} must be a number, not below zero.", name);
    }
    if (note.ways.empty()) refuse("{} has no fingering; give one or leave the note out.", name);
    for (const PlayedNote& way : note.ways) {
        if (!std::isfinite(way.mean.value()) || !std::isfinite(way.spread.value()) ||
            way.spread.value() < 0.0 || !std::isfinite(way.penalty.value()) || way.penalty.value() < 0.0) {
            refuse(
                "What is believed of {} with {} is no number; mean, spread and penalty must be numbers, the "
                "last two not below zero.",
                name, way.fingering.valves.text());
        }
    }
}

void check(const SettingsConstants& constants) {
    const bool sound = std::isfinite(constants.flat_weight) && constants.flat_weight > 0.0 &&
                       std::isfinite(constants.cost_per_cent_moved) && constants.cost_per_cent_moved >= 0.0 &&
                       std::isfinite(constants.step.value()) && constants.step.value() >= 0.0;
    if (!sound) {
        refuse(
            "The settings need a flat weight above zero, and a cost of moving and a step that are not below "
            "zero.");
    }
}

}  // namespace

void check(const SettingsQuestion& question) {
    if (question.slides.size() != question.tube.slides.size()) {
        refuse("The horn has {} tuning slides; give a position for each, not {}.",
               question.tube.slides.size(), question.slides.size());
    }
    check(question.constants);
    for (const QuestionSlide& slide : question.slides)
        check(slide);
    std::size_t ways = 0;
    double weight = 0.0;
    for (const QuestionNote& note : question.notes) {
        check(note);
        ways += note.ways.size();
        weight += note.weight;
    }
    if (question.notes.empty()) refuse("There are no notes to set the slides by; give at least one.");
    if (weight <= 0.0) refuse("Every note has weight 0; give at least one note a weight above zero.");
    if (!question.covariance.empty() && question.covariance.size() != ways * ways) {
        refuse("The covariance has {} numbers; {} ways of playing need {}.", question.covariance.size(), ways,
               ways * ways);
    }
    if (question.held_note && question.held_note->note >= question.notes.size()) {
        refuse("The note to hold is number {}, but there are {} notes.", question.held_note->note + 1,
               question.notes.size());
    }
}

}  // namespace lowledger::tuning
