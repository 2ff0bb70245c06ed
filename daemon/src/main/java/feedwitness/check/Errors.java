package feedwitness.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Errors found at one or two strengths, and between them on a straight line; beyond them the
 * nearest stands.
 *
 * @param nodes one or more, weakest first
 */
public record Errors(List<Node> nodes) {

  /**
   * Error at a strength.
   *
   * @param strength mS/cm at 25 °C
   * @param percent shown less true, % of true
   * @param standardPercent its standard uncertainty, %
   */
  public record Node(double strength, double percent, double standardPercent) {}

  /**
   * Sorts by strength.
   *
   * @throws IllegalArgumentException if there are none
   */
  public Errors {
    if (nodes.isEmpty()) {
      throw new IllegalArgumentException("no error at any strength");
    }
    nodes = nodes.stream().sorted(Comparator.comparingDouble(Node::strength)).toList();
  }

  /** Of the results of a round. */
  public static Errors of(List<StandardResult> results) {
    return new Errors(
        results.stream()
            .map(r -> new Node(r.nominal(), r.errorPercent(), r.standardPercent()))
            .toList());
  }

  /** Error and standard uncertainty at a strength in mS/cm at 25 °C; NaN stands for the middle. */
  public Node at(double strength) {
    Node first = nodes.get(0);
    Node last = nodes.get(nodes.size() - 1);
    double wanted = Double.isNaN(strength) ? (first.strength() + last.strength()) / 2 : strength;
    if (wanted <= first.strength()) {
      return first;
    }
    for (int i = 1; i < nodes.size(); i++) {
      Node b = nodes.get(i);
      if (wanted <= b.strength()) {
        return between(nodes.get(i - 1), b, wanted);
      }
    }
    return last;
  }

  private static Node between(Node a, Node b, double wanted) {
    double share = (wanted - a.strength()) / (b.strength() - a.strength());
    return new Node(
        wanted,
        a.percent() * (1 - share) + b.percent() * share,
        // Uncertainties of both ends may share causes: the larger, not the root of squares.
        Math.max(a.standardPercent(), b.standardPercent()));
  }

  String toText() {
    List<String> parts = new ArrayList<>();
    for (Node node : nodes) {
      parts.add(node.strength() + ":" + node.percent() + ":" + node.standardPercent());
    }
    return String.join(" ", parts);
  }

  static Errors parse(String text) {
    List<Node> nodes = new ArrayList<>();
    for (String part : text.split(" ", -1)) {
      String[] words = part.split(":", -1);
      if (words.length != 3) {
        throw new IllegalArgumentException("'%s' is no strength:error:uncertainty".formatted(part));
      }
      nodes.add(
          new Node(
              Double.parseDouble(words[0]),
              Double.parseDouble(words[1]),
              Double.parseDouble(words[2])));
    }
    return new Errors(nodes);
  }
}
