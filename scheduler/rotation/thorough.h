// SPDX-License-Identifier: GPL-3.0-or-later
// Small classes: settles what the search has found by looking at everything, first the components that
// matter most, then all of them, free and on every ring there is. Larger classes are left as they are.
#pragma once

#include "scheduler/rotation/engine.h"
#include "scheduler/rotation/exact.h"

namespace floorwheel {

class Thorough {
 public:
  Thorough(const Problem&, const Task&);
  /// Whether the class is small enough.
  bool can();
  void settle(Answer&);

 private:
  void settle_free(Found&);
  void settle_ring(Found&, const Found* free);
  bool over_rings(Found&, int leading, const Cost& floor, std::int64_t steps);

  const Problem& p_;
  const Task& task_;
  const int all_;
  const int leading_;  // components that decide: three, or four with `moved`
  bool listed_ = false;
  std::int64_t share_ = 1;
  std::optional<RowLists> lists_;
};

}  // namespace floorwheel
