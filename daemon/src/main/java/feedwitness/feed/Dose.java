package feedwitness.feed;

/** So much of a product in a litre of feed. */
record Dose(Use use, double gramsPerLitre) {
  Product product() {
    return use.product();
  }

  Dose times(double factor) {
    return new Dose(use, gramsPerLitre * factor);
  }
}
