package feedwitness.sample;

import static org.junit.jupiter.api.Assertions.assertFalse;

import feedwitness.frame.FrameOutcome.Frame;
import feedwitness.frame.LineText;
import feedwitness.profile.DeviceProfile;
import feedwitness.quantity.Octets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Size;

/** What holds for every decoder whatever a message holds. */
class DecoderPropertiesTest {

  @Property(tries = 1000)
  void noLineMakesADecoderThrow(@ForAll @CharRange(from = 0, to = 255) String line) {
    decodeWithAll(List.of(Octets.ofText(line)));
  }

  @Property(tries = 1000)
  void noLineOfDigitsAndSignsGivesAnInfiniteNumber(
      @ForAll @CharRange(from = '+', to = '9') String conductivity,
      @ForAll @CharRange(from = '+', to = '9') String temperature) {
    decodeWithAll(List.of(Octets.ofText(conductivity + "," + temperature)));
    decodeWithAll(List.of(Octets.ofText("EC=" + conductivity + ";T=" + temperature)));
  }

  @Property(tries = 1000)
  void noRepliesMakeADecoderThrow(@ForAll @Size(max = 3) List<@Size(max = 14) byte[]> replies) {
    List<Octets> octets = new ArrayList<>();
    replies.forEach(reply -> octets.add(Octets.of(reply)));
    decodeWithAll(octets);
  }

  @Property(tries = 500)
  void everyOctetOfALineIsShownAsText(@ForAll @Size(max = 40) byte[] line) {
    Octets octets = Octets.of(line);
    assertFalse(LineText.of(octets).length() > octets.length());
  }

  private static void decodeWithAll(List<Octets> messages) {
    for (DeviceProfile profile : FamilyProfiles.all()) {
      DecodeOutcome outcome =
          Decoder.of(profile).decode(messages.stream().map(Frame::new).toList());
      if (outcome instanceof DecodeOutcome.Decoded decoded) {
        assertFalse(Double.isInfinite(decoded.reading().conductivity()));
        assertFalse(Double.isInfinite(decoded.reading().temperature()));
      }
    }
  }
}
