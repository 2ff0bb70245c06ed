package feedwitness.app;

import feedwitness.quantity.ListenAddress;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads HOST:PORT on the command line. */
final class ListenOption implements ITypeConverter<ListenAddress> {
  @Override
  public ListenAddress convert(String text) {
    try {
      return ListenAddress.parse(text);
    } catch (IllegalArgumentException e) {
      throw new TypeConversionException(String.valueOf(e.getMessage()));
    }
  }
}
