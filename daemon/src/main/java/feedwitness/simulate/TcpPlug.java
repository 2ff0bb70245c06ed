package feedwitness.simulate;

import feedwitness.quantity.Octets;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * A cable for places without pseudo-terminals: a TCP serial server on the loopback address, for one
 * listener at a time; a new one takes the place of the old. Pulled, it refuses connections.
 */
final class TcpPlug implements Plug {
  private static final long LOOK_AGAIN_NANOS = 2_000_000;

  private final ByteBuffer buffer = ByteBuffer.allocate(4096);
  private int port;
  private @Nullable ServerSocketChannel server;
  private @Nullable SocketChannel client;

  private TcpPlug() {}

  /** On a free port. */
  static TcpPlug in() throws IOException {
    TcpPlug plug = new TcpPlug();
    plug.replug();
    return plug;
  }

  @Override
  public String text() {
    return "tcp:127.0.0.1:" + port;
  }

  @Override
  public synchronized void send(Octets octets) {
    SocketChannel now = client();
    if (now != null) {
      try {
        now.write(ByteBuffer.wrap(octets.toArray())); // what does not fit is lost
      } catch (IOException e) {
        hangUp();
      }
    }
  }

  @Override
  public Octets receive(int timeoutMillis) {
    long deadline = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(timeoutMillis);
    do {
      Octets got = receiveNow();
      if (got.length() > 0) {
        return got;
      }
      LockSupport.parkNanos(LOOK_AGAIN_NANOS);
    } while (deadline - System.nanoTime() > 0);
    return Octets.NONE;
  }

  private synchronized Octets receiveNow() {
    SocketChannel now = client();
    if (now != null) {
      try {
        buffer.clear();
        int got = now.read(buffer);
        if (got > 0) {
          return Octets.of(buffer.array(), 0, got);
        }
        if (got < 0) {
          hangUp();
        }
      } catch (IOException e) {
        hangUp();
      }
    }
    return Octets.NONE;
  }

  private @Nullable SocketChannel client() {
    try {
      SocketChannel fresh = server == null ? null : server.accept();
      if (fresh != null) {
        hangUp();
        fresh.configureBlocking(false);
        fresh.setOption(StandardSocketOptions.TCP_NODELAY, true);
        client = fresh;
      }
    } catch (IOException e) {
      Logger.debug("{}: {}", text(), e.getMessage());
    }
    return client;
  }

  private void hangUp() {
    SocketChannel old = client;
    client = null;
    if (old != null) {
      closeQuietly(old);
    }
  }

  private void closeQuietly(java.nio.channels.Channel channel) {
    try {
      channel.close();
    } catch (IOException e) {
      Logger.debug("{}: {}", text(), e.getMessage());
    }
  }

  @Override
  public synchronized void unplug() {
    hangUp();
    ServerSocketChannel old = server;
    server = null;
    if (old != null) {
      closeQuietly(old);
    }
  }

  @Override
  public synchronized void replug() throws IOException {
    if (server == null) {
      ServerSocketChannel fresh = ServerSocketChannel.open();
      try {
        fresh.setOption(StandardSocketOptions.SO_REUSEADDR, true);
        fresh.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
        fresh.configureBlocking(false);
        port = ((InetSocketAddress) fresh.getLocalAddress()).getPort();
      } catch (IOException | RuntimeException e) {
        fresh.close();
        throw e;
      }
      server = fresh;
    }
  }

  @Override
  public void close() {
    unplug();
  }
}
