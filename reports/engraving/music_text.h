#pragma once

#include <string>
#include <string_view>

#include "reports/engraving/music.h"

namespace lowledger::engraving {

/// Reads a line of music from text, so that exercises can stand in data files. Words are separated by white
/// space:
///
///     clef=bass key=2b time=4/4 tempo="Slow"   in front, each once, any may be missing; key=3# has sharps
///     Bb2/4  C3/8.  D3                         a note and its part of a whole note, `.` dotted; without `/`
///                                              as long as the note or rest before
///     r/2                                      a rest
///     (Bb2 C3)  Bb2/2~                         a slur; a tie to the next note
///     Bb2^  Bb2,                               a fermata; a breath after
///     Bb2[12]  Bb2{+14}                        a fingering or position; a tendency in cents
///     pp p mp mf f ff  <  >                    dynamics and hairpins, before their note
///     "hold it"                                words above the next note
///     |  ||  |.  |:  :|                        bar lines: single, double, final, repeat from and to here
///
/// With a time, each bar must fill it, but for the first, the last and those beside a repeat, which may be
/// shorter. Throws Refusal that names the column (and the line, if there are several).
MusicLine parse_music(std::string_view text);

/// The line as text that `parse_music` reads as an equal line, if its words hold no quotation mark, its
/// figures no ] and its tendencies whole tenths of a cent.
std::string music_text(const MusicLine& line);

}  // namespace lowledger::engraving
