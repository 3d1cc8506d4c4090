package loopwright.io.instrument;

import loopwright.casework.feed.MeterFeed;
import loopwright.casework.feed.MeterPort;

/** Connects to meters. */
public final class Instruments implements MeterFeed.Opener {
  @Override
  public MeterFeed open(MeterPort port) {
    return InstrumentFeed.start(
        port.words(),
        () ->
            port instanceof MeterPort.Tcp tcp
                ? TcpLink.open(tcp)
                : SerialLink.open((MeterPort.Serial) port));
  }
}
