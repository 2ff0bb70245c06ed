package feedwitness.feed;

/**
 * A product chosen for a mix.
 *
 * @param field of the form, for messages
 * @param part by weight among the products, where a strength is wanted
 * @param rate g/L that is given; NaN where it is to be found
 * @param most g/L of feed
 * @param spoonGrams what one level spoon of it weighs; NaN without a spoon
 */
record Use(
    String field, Product product, double part, double rate, double most, double spoonGrams) {}
