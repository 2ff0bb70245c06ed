package feedwitness.sample;

import feedwitness.profile.Fields.ContactPlace;

/** From the number that stands for a contact to what it says. */
final class Contacts {
  private Contacts() {}

  /** No number says nothing. */
  static Contact of(ContactPlace at, double number) {
    if (!Double.isFinite(number)) {
      return Contact.NONE;
    }
    return (number == 0) == at.closedIsZero() ? Contact.CLOSED : Contact.OPEN;
  }
}
