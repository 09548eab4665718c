// The rows: adding a command is one file with its run, and one row here.
#include "command/table.h"

#include <algorithm>

namespace nook {

namespace {

Command check_row() {
  return {"check",
          "everything on one page, worst first: room, fit, holes, way in, cautions",
          "Works out the room from its readings, puts the design into it, lays out the holes, and "
          "says on one page what fits, what does not, by how much, and what to do about it. The "
          "page names the one measurement that has to come out right before anything is cut.",
          {"nookfit check rooms/lookout", "nookfit check . --json"},
          {},
          run_check};
}

Command survey_row() {
  return {
      "survey",
      "guided entry of the readings, one question at a time",
      "Asks for one reading after the other, in the order in which one walks through the room, and "
      "writes each accepted one into room.toml before the next question. ? shows where to hold the "
      "tape; back, skip, again and done do as they say. An entry that was broken off goes on where "
      "it stopped.",
      {"nookfit survey rooms/lookout", "nookfit survey rooms/lookout --sheet"},
      {{"--sheet", "",
        "print what to measure for the design instead, in walking order; asks and writes nothing"}},
      run_survey};
}

Command room_row() {
  return {"room",
          "the room as found, readings that cannot be right, what to measure next",
          "Brings all readings into one room and says how surely each angle, lean and length is "
          "known. Needs room.toml only. With --expect it foretells a straight tape between two "
          "marks, so that one more measurement proves the room before anything is cut.",
          {"nookfit room rooms/lookout", "nookfit room . --expect left:50 right:70 height:30",
           "nookfit room . --expect mark:left/right 'mark:nail in the sill'"},
          {{"--expect", "MARKS",
            "WALL:LENGTH twice and height:LENGTH (left out: 1 m), or mark:NAME twice; JOB stands "
            "before it",
            2, 3},
           {"--verbose", "", "every reading with its statistics"}},
          run_room};
}

Command fit_row() {
  return {
      "fit",
      "clashes, gaps, notches, tapers, scribes, clearances, what shows",
      "Puts the pieces into the room as found, in the order of installing, and tells each edge "
      "that meets a wall, the floor or another piece: how wide a gap, where, and what closes it.",
      {"nookfit fit rooms/lookout", "nookfit fit . --round 1/32"},
      {},
      run_fit};
}

Command drill_row() {
  return {"drill",
          "where to drill, into which stud, how deep, and whether it holds",
          "Lays out the holes: each measured from an edge that takes a tape's hook, in a stud with "
          "enough wood around it and clear of services, with its bit, depth and strength.",
          {"nookfit drill rooms/lookout", "nookfit drill . --units mm"},
          {},
          run_drill};
}

Command adapt_row() {
  return {"adapt",
          "the design changed to suit the room, as a new job",
          "Changes the design as little as it can, cheapest work first, until it fits: moves, "
          "trims, caulk and cover trim, tapers, notches, scribes, fillers, each with its reason. "
          "Writes a new job; the text of the design stays as it is but for the numbers that "
          "change. Where nothing works it says which wishes contradict each other.",
          {"nookfit adapt rooms/lookout -o fitted"},
          {{"-o", "NEWJOB", "the folder of the new job; made where it is missing"}},
          run_adapt};
}

Command cut_row() {
  return {
      "cut",
      "cutting list and check measurements",
      "Lists each piece as the room needs it, by stock and longest first: blank and finished size, "
      "edges to leave wild, tapers, scribes, notches, cutouts, holes, and the measures that prove "
      "it right; lays the pieces out on boards and sheets and says what to buy.",
      {"nookfit cut rooms/lookout", "nookfit cut . -o templates"},
      {{"-o", "FOLDER", "full-size templates, pictures and DXF outlines of the pieces go there"}},
      run_cut};
}

Command verify_row() {
  return {
      "verify",
      "pieces as cut against pieces as needed, and how to save a wrong one",
      "Holds the measured pieces of pieces.toml against what the room needs: forgotten cuts, "
      "notches on the wrong side or without clearance, tapers, squareness, pieces swapped. Says "
      "which edge to trim and what that spoils, or that a piece has to be cut again, before paint.",
      {"nookfit verify rooms/lookout", "nookfit verify . --enter", "nookfit verify . --json"},
      {{"--enter", "", "asks for each size first, as 'survey' does, and writes pieces.toml"}},
      run_verify};
}

Command carry_row() {
  return {"carry",
          "the way in: doors, turns, tipping up under the ceiling",
          "Takes each piece and group through the doors and turns of [access] in room.toml, up "
          "under the ceiling beside what already stands, and into an alcove; says how to hold it, "
          "and how much room is left or missing.",
          {"nookfit carry rooms/lookout", "nookfit carry . --units mm"},
          {},
          run_carry};
}

Command safety_row() {
  return {"safety",
          "cautions with their sources",
          "Looks at the design as it will stand: openings that trap, guards and rails, ladders, "
          "loads, what tips over, what lies in the wall. Each caution names its source; your local "
          "code and a licensed person decide.",
          {"nookfit safety rooms/lookout", "nookfit safety . --json"},
          {},
          run_safety};
}

Command sheet_row() {
  return {"sheet",
          "the sheets to hold: measuring, cutting, installing",
          "Writes the measuring, cutting and installing sheets as HTML and PDF, the page to tape "
          "on each wall, full-size templates, and every picture by itself, into a folder.",
          {"nookfit sheet rooms/lookout -o sheets"},
          {{"-o", "FOLDER", "where the files go; made where it is missing"}},
          run_sheet};
}

}  // namespace

const std::vector<Command>& commands() {
  static const std::vector<Command> rows = {check_row(), survey_row(), room_row(), fit_row(),
                                            drill_row(), adapt_row(),  cut_row(),  verify_row(),
                                            carry_row(), safety_row(), sheet_row()};
  return rows;
}

const std::vector<Option>& common_options() {
  static const std::vector<Option> options = {
      {"--json", "", "the answer as JSON: millimeters, degrees, newtons, nothing rounded"},
      {"--units",
       "UNIT",
       "inch, mm or cm in the answer; left out: those of room.toml",
       1,
       1,
       {"inch", "mm", "cm"}},
      {"--round", "LENGTH", "round lengths to this; left out: 1/16 in, 1 mm or 0.1 cm"},
      {"--sure", "CHANCE", "how sure 'fits' and 'does not fit' have to be; left out: 0.95"},
      {"--color",
       "WHEN",
       "auto, always or never; NO_COLOR is honored too",
       1,
       1,
       {"auto", "always", "never"}},
      {"--quiet", "", "print the verdict alone"},
      {"--help", "", "this help (also -h)"},
  };
  return options;
}

const Command& help_command() {
  static const Command row = {
      "help",
      "what a command does and takes: nookfit help check",
      "Without a command: all commands, the options they share, and the exit statuses. With --as "
      "the whole of it as a man page, or as what a shell completes.",
      {"nookfit help check", "nookfit help --as man"},
      {{"--as", "PAGE", "man, bash, zsh or fish", 1, 1, {"man", "bash", "zsh", "fish"}}},
      nullptr};
  return row;
}

const std::vector<Status>& exit_statuses() {
  static const std::vector<Status> rows = {
      {0, "all is well and sure"},
      {1, "something does not fit, misses, is suspect, or cannot be told yet"},
      {2, "bad input or usage"},
      {3, "a fault of the program or the machine"},
  };
  return rows;
}

std::string_view operand(const Command& command) {
  return command.run == nullptr ? "COMMAND" : "JOB";
}

std::vector<Option> options_of(const Command& command) {
  if (command.run == nullptr) return command.options;
  std::vector<Option> all = command.options;
  all.insert(all.end(), common_options().begin(), common_options().end());
  return all;
}

const Command* command_named(std::string_view name) {
  const auto& rows = commands();
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const Command& row) { return row.name == name; });
  return found == rows.end() ? nullptr : &*found;
}

}  // namespace nook
