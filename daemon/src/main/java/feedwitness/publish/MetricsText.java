package feedwitness.publish;

import java.util.Map;
import java.util.TreeMap;

/**
 * Writes metrics as text: OpenMetrics 1.0.0, or the older text format version 0.0.4, which differ
 * in how counters and infos are declared and in the last line.
 */
final class MetricsText {
  private final boolean open;
  private final StringBuilder text = new StringBuilder();
  private String sample = "";

  /** {@code open}: OpenMetrics. */
  MetricsText(boolean open) {
    this.open = open;
  }

  MetricsText gauge(String name, String help) {
    return family(name, "gauge", name, name, help);
  }

  /** {@code name} without its {@code _total}. */
  MetricsText counter(String name, String help) {
    String total = name + "_total";
    return family(open ? name : total, "counter", total, total, help);
  }

  /** {@code name} without its {@code _info}. */
  MetricsText info(String name, String help) {
    String info = name + "_info";
    return family(open ? name : info, open ? "info" : "gauge", info, info, help);
  }

  private MetricsText family(
      String declared, String type, String sampled, String olderName, String help) {
    sample = open ? sampled : olderName;
    text.append("# TYPE ").append(declared).append(' ').append(type).append('\n');
    text.append("# HELP ").append(declared).append(' ').append(escaped(help)).append('\n');
    return this;
  }

  /** A sample of the family declared last; labels in pairs of name and value. */
  MetricsText sample(double value, String... labels) {
    Map<String, String> pairs = new TreeMap<>();
    for (int i = 0; i + 1 < labels.length; i += 2) {
      pairs.put(labels[i], labels[i + 1]);
    }
    text.append(sample);
    if (!pairs.isEmpty()) {
      text.append('{');
      String comma = "";
      for (Map.Entry<String, String> pair : pairs.entrySet()) {
        text.append(comma).append(pair.getKey());
        text.append("=\"").append(escaped(pair.getValue())).append('"');
        comma = ",";
      }
      text.append('}');
    }
    text.append(' ').append(number(value)).append('\n');
    return this;
  }

  private static String number(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }

  private static String escaped(String text) {
    return text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n");
  }

  @Override
  public String toString() {
    return open ? text + "# EOF\n" : text.toString();
  }
}
