package feedwitness.publish.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The secret that opens the service to other machines. */
class AccessKeyTest {
  @TempDir private Path folder;

  private String refused(Path file) {
    return assertInstanceOf(AccessKey.Reading.Refused.class, AccessKey.read(file)).message();
  }

  private Path file(String text, String rights) throws IOException {
    Path file = Files.writeString(folder.resolve("access.key"), text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(rights));
    return file;
  }

  @Test
  void makesAKeyThatOnlyItsOwnerMayRead() throws Exception {
    Path file = folder.resolve("access.key");
    AccessKey.make(file);
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    AccessKey key = assertInstanceOf(AccessKey.Reading.Good.class, AccessKey.read(file)).key();
    assertTrue(key.is(Files.readString(file).strip()));
  }

  @Test
  void overwritesNoKey() throws Exception {
    Path file = folder.resolve("access.key");
    AccessKey.make(file);
    String before = Files.readString(file);
    IOException e = assertThrows(IOException.class, () -> AccessKey.make(file));
    assertTrue(String.valueOf(e.getMessage()).contains("is left as it is"));
    assertEquals(before, Files.readString(file));
    assertThrows(IOException.class, () -> AccessKey.make(folder.resolve("none/access.key")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"rw-r--r--", "rw-rw----", "rw-----w-"})
  void refusesAKeyThatIsOpenToOthers(String rights) throws Exception {
    String said = refused(file("0123456789abcdefghijklmnopqrstuvwxyz", rights));
    assertTrue(said.contains(rights) && said.contains("chmod 600"), said);
  }

  @ParameterizedTest
  @ValueSource(strings = {"rw-------", "r--------", "rw-r-----"})
  void takesAKeyThatOwnerAndGroupRead(String rights) throws Exception {
    assertInstanceOf(
        AccessKey.Reading.Good.class,
        AccessKey.read(file("0123456789abcdefghijklmnopqrstuvwxyz", rights)));
  }

  @Test
  void refusesAKeyThatCouldBeGuessed() throws Exception {
    assertTrue(refused(file("quarry-end", "rw-------")).contains("10 characters; 32 to 256"));
    assertTrue(refused(file("", "rw-------")).contains("0 characters"));
    assertTrue(refused(file("ab".repeat(20), "rw-------")).contains("12 different"));
    assertTrue(refused(file("x\n".repeat(40), "rw-------")).contains("plain characters"));
    assertTrue(refused(file("x".repeat(5000), "rw-------")).contains("32 to 256"));
  }

  @Test
  void saysHowToMakeAKeyThatIsNotThere() {
    assertTrue(refused(folder.resolve("none")).contains("feedwitness access-key"));
    assertTrue(refused(folder).contains("is no file"));
  }
}
