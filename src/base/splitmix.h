// The mixing step of SplitMix64.
#pragma once

#include <cstdint>

namespace nook {

/// The state goes on by this from one number to the next.
inline constexpr std::uint64_t kSplitMixStep = 0x9e3779b97f4a7c15u;
/// The number that follows state `x` (Steele, Lea and Flood 2014, Fast splittable pseudorandom
/// number generators, figure 17).
constexpr std::uint64_t split_mixed(std::uint64_t x) {
  x += kSplitMixStep;
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9u;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebu;
  return x ^ (x >> 31);
}

}  // namespace nook
