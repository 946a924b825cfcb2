#pragma once

#include <utility>
#include <variant>

#include "core/base/problem.h"
#include "core/base/promise.h"

namespace dampward {

// A value, or the problems that kept it from being made (never an empty list). The caller must look before taking.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : content_(std::move(value)) {}
  Result(Problem problem) : content_(Problems{std::move(problem)}) {}
  Result(Problems problems) : content_(std::move(problems)) {
    DAMPWARD_PROMISE(!std::get<Problems>(content_).empty(), "a failed result names at least one problem");
  }

  bool ok() const { return std::holds_alternative<T>(content_); }
  explicit operator bool() const { return ok(); }

  const T& value() const& {
    DAMPWARD_PROMISE(ok(), "a result is asked for its value only when it has one");
    return std::get<T>(content_);
  }
  T&& value() && {
    DAMPWARD_PROMISE(ok(), "a result is asked for its value only when it has one");
    return std::get<T>(std::move(content_));
  }
  const T& operator*() const& { return value(); }
  const T* operator->() const { return &value(); }

  const Problems& problems() const {
    DAMPWARD_PROMISE(!ok(), "a result is asked for its problems only when it has some");
    return std::get<Problems>(content_);
  }

 private:
  std::variant<T, Problems> content_;
};

}  // namespace dampward
