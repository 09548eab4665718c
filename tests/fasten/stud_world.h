// Simulated walls whose studs are known, and what a person finds of them: truth code of its own,
// that shares no line with the program.
#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "fasten/bench.h"

/// A stud as it is: its middle half way up and its lean along the wall, in the plane of the wall.
struct TrueStud {
  double middle = 0, lean = 0;

  double at(double z) const { return middle + lean * (z - 1200); }
};

/// A service as it is: a pipe somewhere in the wall.
struct TruePipe {
  double left = 0, right = 0, low = 0, high = 0;
};

/// One left wall. `bench` holds what was measured on it and a ledger with screws.
struct StudWorld {
  Bench bench;
  std::vector<TrueStud> studs;  // one a ply
  std::vector<TruePipe> pipes;
  std::vector<double> empty_places;  // of the even spacing, where somebody looked and found nothing
  double corner_lean = 0;            // how far the corner moves along the wall, mm per mm up

  /// Whether a screw laid out `along` from the real corner at height z stays `edge` inside a stud.
  bool in_wood(double along, double z, double edge) const;
};

/// What varies from wall to wall; every error as it is documented for the program.
StudWorld stud_world(std::mt19937_64& random);
