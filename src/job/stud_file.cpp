// Reads [wall.studs] of room.toml.
#include <fmt/format.h>

#include "job/room_file.h"

namespace nook {
namespace {

using namespace room_keys;

void read_edges(Source& source, const Node& node, StudFound& stud, const Remarks& remarks) {
  const auto* edges = source.list(node, "edges", {2, 2, "[first edge, second edge]"});
  if (!edges) return;
  stud.left_edge = readings_of(source, (*edges)[0], {"the edge", {stud.id + ".edges[0]"}}, remarks);
  stud.right_edge =
      readings_of(source, (*edges)[1], {"the edge", {stud.id + ".edges[1]"}}, remarks);
  if (stud.left_edge.empty() || stud.right_edge.empty()) return;
  const Reading &left = stud.left_edge[0], &right = stud.right_edge[0];
  if (left.value >= right.value && !left.struck && !right.struck)
    source.fault(node.place, "the second edge is not further than the first", "pair-reversed",
                 "first the edge nearer to the corner it is counted from");
}

void read_found(RoomFile& file, const Node& node, int wall, int index) {
  Source& source = file.source;
  const std::size_t before = source.troubles();
  Table table(source, node, kFound);
  StudFound stud;
  stud.place = node.place;
  stud.id = fmt::format("wall[{}].studs.found[{}]", wall, index);
  stud.height = height_in(table);
  stud.from_right = file.from_right(table, wall, file.survey.walls[wall].from_corner_right);
  using W = Word<FoundBy>;
  stud.by = table
                .word<FoundBy>({"by"}, {W{"nail", FoundBy::nail}, W{"magnet", FoundBy::magnet},
                                        W{"finder", FoundBy::finder}})
                .value_or(FoundBy::finder);
  const Remarks remarks = table.remarks();
  const Node* edges = table.find({"edges"});
  const Node* centre = table.find({"centre"});
  if (edges && centre)
    source.fault(centre->place, "edges and center of one stud", "two-places",
                 "say one; two finds are two entries");
  else if (edges)
    read_edges(source, *edges, stud, remarks);
  else if (centre)
    stud.centre = readings_of(source, *centre, {"centre", {stud.id, ".centre"}}, remarks);
  else if (source.sound_since(before))
    source.fault(node.place, "a stud found nowhere", "missing-key", "say its edges or its center");
  if (source.sound_since(before)) file.survey.walls[wall].studs->found.push_back(std::move(stud));
}

void read_blocking(RoomFile& file, const Node& node, int wall) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kBlocking);
  Blocking block;
  block.place = node.place;
  block.from_right = file.from_right(table, wall, file.survey.walls[wall].from_corner_right);
  if (const auto along = table.lengths({"along", needed, Range::any}, {2, 2, "[from, to]"}))
    std::copy(along->begin(), along->end(), block.along);
  if (const Node* height = table.find({"height", needed}))
    read_heights(file.source, *height, block.height);
  if (!file.source.sound_since(before)) return;
  if (block.along[0] >= block.along[1])
    file.source.fault(table.place_of("along"), "along must grow", "pair-reversed",
                      "first the end nearer to the corner it is counted from");
  file.survey.walls[wall].studs->blocking.push_back(block);
}

}  // namespace

void read_studs(RoomFile& file, const Node& node, int wall) {
  Table table(file.source, node, kStuds);
  Studs& studs = file.survey.walls[wall].studs.emplace();
  studs.place = node.place;
  using W = Word<StudKind>;
  studs.kind = table
                   .word<StudKind>(
                       {"kind"}, {W{"wood", StudKind::wood}, W{"steel", StudKind::steel},
                                  W{"masonry", StudKind::masonry}, W{"furring", StudKind::furring},
                                  W{"unknown", StudKind::unknown}})
                   .value_or(StudKind::unknown);
  studs.spacing = table.length({"spacing", false, Range::positive});
  studs.width = table.length({"width", false, Range::positive}).value_or(studs.width);
  studs.depth = table.length({"depth", false, Range::positive});
  studs.gravity = gravity_in(table);
  int i = 0;
  for (const Node* entry : table.tables("found")) read_found(file, *entry, wall, i++);
  for (const Node* entry : table.tables("blocking")) read_blocking(file, *entry, wall);
}

}  // namespace nook
