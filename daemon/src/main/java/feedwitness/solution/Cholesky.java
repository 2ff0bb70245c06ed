package feedwitness.solution;

/** Solves small symmetric positive definite systems in place. */
final class Cholesky {
  private Cholesky() {}

  /**
   * Overwrites the right side with the solution and the lower triangle with the factor.
   *
   * @return false where the matrix is not positive definite to working precision
   */
  static boolean solve(double[][] matrix, double[] right, int size) {
    for (int i = 0; i < size; i++) {
      double[] row = matrix[i];
      for (int j = 0; j < i; j++) {
        row[j] = (row[j] - dot(row, matrix[j], j)) / matrix[j][j];
      }
      double pivot = row[i] - dot(row, row, i);
      if (!(pivot > 0)) {
        return false;
      }
      row[i] = Math.sqrt(pivot);
    }
    for (int i = 0; i < size; i++) {
      right[i] = (right[i] - dot(matrix[i], right, i)) / matrix[i][i];
    }
    for (int i = size - 1; i >= 0; i--) {
      double sum = right[i];
      for (int k = i + 1; k < size; k++) {
        sum -= matrix[k][i] * right[k];
      }
      right[i] = sum / matrix[i][i];
    }
    return true;
  }

  private static double dot(double[] a, double[] b, int length) {
    double sum = 0;
    for (int k = 0; k < length; k++) {
      sum += a[k] * b[k];
    }
    return sum;
  }
}
