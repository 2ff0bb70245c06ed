package feedwitness.quantity;

import java.util.Locale;
import java.util.Optional;

/** Units in which instruments state temperature. */
public enum TemperatureUnit {
  CELSIUS("°C") {
    @Override
    public double toCelsius(double inThisUnit) {
      return inThisUnit;
    }
  },
  FAHRENHEIT("°F") {
    @Override
    public double toCelsius(double inThisUnit) {
      return (inThisUnit - 32) / 1.8;
    }
  };

  private final String symbol;

  TemperatureUnit(String symbol) {
    this.symbol = symbol;
  }

  /** As printed. */
  public String symbol() {
    return symbol;
  }

  /** The same temperature in °C; NaN stays NaN. */
  public abstract double toCelsius(double inThisUnit);

  /** Reads {@code °C}, {@code C}, {@code °F} or {@code F}. */
  public static Optional<TemperatureUnit> parse(String text) {
    return switch (text.strip().replace("°", "").toUpperCase(Locale.ROOT)) {
      case "C", "CELSIUS" -> Optional.of(CELSIUS);
      case "F", "FAHRENHEIT" -> Optional.of(FAHRENHEIT);
      default -> Optional.empty();
    };
  }
}
