// Slopes, loads, densities and angles as typed.
#include "base/quantity.h"

#include <catch2/catch.hpp>

using namespace nook;

TEST_CASE("quantity: slopes") {
  CHECK(*read_slope("0.5 mm/m") == Approx(0.0005));
  CHECK(*read_slope("1/16 in/ft") == Approx(1.0 / 16 / 12));
  CHECK(*read_slope("-1 mm/m") == Approx(-0.001));
  CHECK(read_slope("0.5").error().code == "unknown-unit");
  CHECK(read_slope("0.5 mm").error().at == 4);
  CHECK(read_slope("0,5 mm/m").error().code == "decimal-comma");
}

TEST_CASE("quantity: loads are newtons") {
  CHECK(*read_load("180 lb") == Approx(800.67989).epsilon(1e-6));
  CHECK(*read_load("80 kg") == Approx(784.532));
  CHECK(*read_load("350 N") == 350);
  CHECK(read_load("180").error().what == "a load without its unit");
  CHECK(read_load("180").error().width == 3);
  CHECK(read_load("180 lbs").error().at == 4);
  CHECK(read_load("180 lbs").error().width == 3);
  CHECK(read_load("heavy").error().code == "not-a-reading");
}

TEST_CASE("quantity: densities are kilograms per cubic metre") {
  CHECK(*read_density("36 lb/ft3") == Approx(576.66).epsilon(1e-4));
  CHECK(*read_density("36 lb/ft³") == Approx(576.66).epsilon(1e-4));
  CHECK(*read_density("600 kg/m3") == 600);
  CHECK(read_density("600 kg").error().code == "unknown-unit");
}

TEST_CASE("quantity: angles are bare degrees") {
  CHECK(in_degrees(*read_angle("91.3")) == Approx(91.3));
  CHECK(in_degrees(*read_angle("91 1/2")) == Approx(91.5));
  CHECK(in_degrees(*read_angle("-12")) == Approx(-12));
  CHECK(read_angle("91.3 deg").error().code == "not-an-angle");
  CHECK(read_angle("400").error().code == "absurd-value");
  CHECK_FALSE(read_angle("nan"));
}

TEST_CASE("quantity: three hundred digits are absurd") {
  CHECK(read_load(std::string(310, '9') + " lb").error().code == "absurd-value");
}
