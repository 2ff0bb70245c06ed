package feedwitness.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.profile.DeviceProfile;
import feedwitness.profile.Fields;
import feedwitness.profile.InstrumentFacts;
import feedwitness.profile.Protocol;
import feedwitness.quantity.ConductivityUnit;
import feedwitness.quantity.Octets;
import feedwitness.sample.Capture;
import feedwitness.sample.CaptureReplay;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BuiltInProfilesTest {
  private final ProfileShelf shelf = ProfileShelf.read(Path.of("/nonexistent/profiles"));

  private DeviceProfile profile(String name) {
    return shelf.find(name).orElseThrow();
  }

  @Test
  void areSixGenericFamilies() {
    assertEquals(List.of(), shelf.problems());
    assertEquals(
        List.of(
            "modbus-contact",
            "modbus-float",
            "modbus-scaled",
            "pushed-csv",
            "query-reply",
            "tcp-text"),
        shelf.names());
  }

  @Test
  void pushedCsvIsReadWithAllItsFacts() {
    DeviceProfile profile = profile("pushed-csv");
    assertEquals(Duration.ofSeconds(2), profile.interval());
    assertEquals("9600 8N1", profile.serial().text());
    Protocol.Line line = assertInstanceOf(Protocol.Line.class, profile.protocol());
    assertEquals(Optional.empty(), line.query());
    assertTrue(line.pattern().matcher("351.2,12.41").matches());
    assertEquals(ConductivityUnit.MICROSIEMENS_PER_CM, profile.fields().conductivityUnit());
    InstrumentFacts facts = profile.instrument();
    assertEquals(InstrumentFacts.Compensation.NONE, facts.compensation());
    assertEquals(20, facts.maxMilliSiemensPerCm(), 1e-9);
    assertEquals(0.0001, facts.resolutionMilliSiemensPerCm(), 1e-12);
    assertEquals(2, facts.accuracyPercent(), 0);
    assertEquals(0.5, facts.temperatureAccuracyKelvin(), 0);
  }

  @Test
  void queryReplyAsksAndReadsTheUnitFromTheLine() {
    DeviceProfile profile = profile("query-reply");
    Protocol.Line line = assertInstanceOf(Protocol.Line.class, profile.protocol());
    assertEquals(Optional.of(Octets.ofHex("52 0d")), line.query());
    assertEquals(
        new Fields.Place.Group("conductivity", Optional.of("unit")),
        profile.fields().conductivity());
    assertEquals(Duration.ofMillis(600), profile.longestReply());
  }

  @Test
  void modbusFamiliesAskForWhatTheirFieldsNeed() {
    assertEquals(
        new Protocol.Modbus(List.of(new Protocol.Read(3, 0, 4))),
        profile("modbus-float").protocol());
    assertEquals(
        Optional.of(
            new Fields.Place.Registers(4, 1, Fields.Type.INT16, Fields.OctetOrder.ABCD, 0.1, 0)),
        profile("modbus-scaled").fields().temperature());
    assertTrue(Double.isNaN(profile("modbus-float").instrument().resolutionMilliSiemensPerCm()));
  }

  @Test
  void theNetworkedOneHasCompensatedAlready() {
    assertEquals(
        InstrumentFacts.Compensation.TO_25, profile("tcp-text").instrument().compensation());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "modbus-contact",
        "modbus-float",
        "modbus-scaled",
        "pushed-csv",
        "query-reply",
        "tcp-text"
      })
  void readFromTheirFilesTheyUnderstandTheirGoldenCaptures(String name) throws IOException {
    Path capture = Path.of("../device-profiles/golden", name + ".capture");
    CaptureReplay.check(profile(name), Capture.read(capture));
  }
}
