package feedwitness.store;

/**
 * A way to see a double as a whole number. An instrument that prints {@code 2.86} makes 286 at
 * scale 2; one that sends a 32-bit float of the same makes 286 too, and gets its float back.
 */
enum NumberScheme {
  /** n / 10^scale. */
  DECIMAL {
    @Override
    long whole(double value, int scale) {
      return (long) Math.rint(value * power(scale));
    }

    @Override
    double value(long whole, int scale) {
      return whole / power(scale);
    }
  },
  /** n / 10^scale, rounded to 32-bit float. */
  DECIMAL_FLOAT {
    @Override
    long whole(double value, int scale) {
      return (long) Math.rint(value * power(scale));
    }

    @Override
    double value(long whole, int scale) {
      return (float) (whole / power(scale));
    }
  },
  /** The bits of a 32-bit float. */
  FLOAT_BITS {
    @Override
    long whole(double value, int scale) {
      return Float.floatToRawIntBits((float) value);
    }

    @Override
    double value(long whole, int scale) {
      return Float.intBitsToFloat((int) whole);
    }
  },
  /** The bits of the double itself. */
  DOUBLE_BITS {
    @Override
    long whole(double value, int scale) {
      return Double.doubleToRawLongBits(value);
    }

    @Override
    double value(long whole, int scale) {
      return Double.longBitsToDouble(whole);
    }
  };

  static final int MAX_SCALE = 9;

  /** Meaningless unless {@link #fits}. */
  abstract long whole(double value, int scale);

  abstract double value(long whole, int scale);

  /** Whether exactly the same bits come back. */
  boolean fits(double value, int scale) {
    return Double.doubleToRawLongBits(value(whole(value, scale), scale))
        == Double.doubleToRawLongBits(value);
  }

  /** Smallest scale at which every value fits that fits at any. */
  int scaleFor(double[] values) {
    if (this == FLOAT_BITS || this == DOUBLE_BITS) {
      return 0;
    }
    int scale = 0;
    for (double value : values) {
      int own = scale;
      while (own <= MAX_SCALE && !fits(value, own)) {
        own++;
      }
      if (own <= MAX_SCALE) {
        scale = own;
      }
    }
    return scale;
  }

  /** Exact: powers of ten up to 10^22 are doubles. */
  private static double power(int scale) {
    return switch (scale) {
      case 0 -> 1;
      case 1 -> 10;
      case 2 -> 100;
      case 3 -> 1e3;
      case 4 -> 1e4;
      case 5 -> 1e5;
      case 6 -> 1e6;
      case 7 -> 1e7;
      case 8 -> 1e8;
      default -> 1e9;
    };
  }
}
