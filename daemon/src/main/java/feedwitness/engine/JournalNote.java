package feedwitness.engine;

import feedwitness.ledger.Attachment;
import java.util.Optional;

/**
 * A note for the journal.
 *
 * @param point measuring point it is about; empty if none
 * @param block plants it is about; empty if none
 * @param author who writes it
 * @param text what was done or seen
 * @param plants what the plants look like; may be empty
 * @param photo a picture
 */
public record JournalNote(
    String point,
    String block,
    String author,
    String text,
    String plants,
    Optional<Attachment> photo) {
  /** Kind of its record. */
  public static final String KIND = "note";
}
