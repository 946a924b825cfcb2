#pragma once

#if DAMPWARD_SUNDIALS

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <functional>
#include <span>
#include <vector>

// Stiff equations handed to SUNDIALS CVODE: its BDF method with dense Newton steps and difference quotients, as it comes.
namespace cvode {

struct Problem {
  std::function<void(std::span<const double>, std::span<double>)> rates;
  std::vector<double> start, absolute;  // absolute tolerances, one for each
  double relative = 1e-6;
  std::vector<double> times;  // seconds, above zero
  std::function<double(std::span<const double>)>
      ends;  // none: run to the last time; else until it falls through zero
};

struct Answer {
  std::vector<std::vector<double>> states;  // at the times that were reached
  double ended = 0;
  std::vector<double> last;  // where it ended
};

namespace detail {
inline std::span<double> values(N_Vector y) {
  return {NV_DATA_S(y), static_cast<std::size_t>(NV_LENGTH_S(y))};
}
inline int rates(sunrealtype, N_Vector y, N_Vector f, void* problem) {
  static_cast<const Problem*>(problem)->rates(values(y), values(f));
  return 0;
}
inline int ends(sunrealtype, N_Vector y, sunrealtype* out, void* problem) {
  *out = static_cast<const Problem*>(problem)->ends(values(y));
  return 0;
}
}  // namespace detail

inline Answer integrate(Problem problem) {
  SUNContext context = nullptr;
  SUNContext_Create(nullptr, &context);
  const auto size = static_cast<sunindextype>(problem.start.size());
  N_Vector y = N_VMake_Serial(size, problem.start.data(), context);
  N_Vector absolute = N_VMake_Serial(size, problem.absolute.data(), context);
  void* solver = CVodeCreate(CV_BDF, context);
  CVodeInit(solver, detail::rates, 0, y);
  CVodeSVtolerances(solver, problem.relative, absolute);
  CVodeSetUserData(solver, &problem);
  CVodeSetMaxNumSteps(solver, 10'000'000);
  if (problem.ends) CVodeRootInit(solver, 1, detail::ends);
  SUNMatrix matrix = SUNDenseMatrix(size, size, context);
  SUNLinearSolver linear = SUNLinSol_Dense(y, matrix, context);
  CVodeSetLinearSolver(solver, linear, matrix);
  Answer answer;
  for (const double time : problem.times) {
    CVodeSetStopTime(solver, time);
    const int flag = CVode(solver, time, y, &answer.ended, CV_NORMAL);
    if (flag < 0) break;
    if (flag == CV_ROOT_RETURN) break;
    answer.states.emplace_back(NV_DATA_S(y), NV_DATA_S(y) + size);
  }
  answer.last.assign(NV_DATA_S(y), NV_DATA_S(y) + size);
  SUNLinSolFree(linear);
  SUNMatDestroy(matrix);
  CVodeFree(&solver);
  N_VDestroy(absolute);
  N_VDestroy(y);
  SUNContext_Free(&context);
  return answer;
}

}  // namespace cvode

#endif
