package feedwitness.publish;

/** Ends the handling of a request with a problem. Carries no stack trace: it is an answer. */
final class ProblemException extends RuntimeException {
  private final transient Problem problem;

  ProblemException(Problem problem) {
    super(problem.detail(), null, false, false);
    this.problem = problem;
  }

  Problem problem() {
    return problem;
  }
}
