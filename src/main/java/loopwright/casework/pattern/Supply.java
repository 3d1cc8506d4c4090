package loopwright.casework.pattern;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Existing.Feed;
import loopwright.model.Estimate;
import loopwright.model.PartKind;
import loopwright.model.PartSpec;

/**
 * What all circuits share: main fuse, bars, key switch, main relay.
 *
 * <pre>
 * battery -- main fuse -- bar, always live --+-- key fuse -- 30 (key) 15 -- bar, live with the key
 *                                            +-- fuses of what works without the key
 *
 * or, by a main relay:
 * bar, always live --+-- key fuse -- 30 (key) 15 -- 86 (main relay) 85 -- ground
 *                    +-- 30 (main relay) 87 -- bar, live with the key
 * </pre>
 */
final class Supply {
  /** Rating of the fuse of a key switch that only feeds a coil, in amperes. Common practice. */
  private static final double KEY_FUSE = 5;

  /** From here on a fuse is bolted, in amperes. Common practice. */
  private static final double BOLTED = 40;

  private Supply() {}

  /** Main fuse near the battery, and the bar behind it. */
  static Feed hotBar(Harness h, double mainFuse, double metres) {
    Optional<Estimate> ohms = mainFuse >= BOLTED ? Optional.of(Bolted.MAIN_FUSE) : Optional.empty();
    String fuse =
        h.add(
            "F",
            h.basis().words().say("part.main-fuse"),
            new PartSpec.Fuse(mainFuse, ohms),
            "battery",
            h.words("why.main-fuse", mainFuse));
    Run run = h.run(Side.HOT, mainFuse, thick(h));
    h.cable(
        PartKind.WIRE,
        run,
        h.vehicle().feedPost(),
        Harness.at(fuse, "feed"),
        0.3,
        h.basis().words().say("wire.battery"),
        Optional.of(Bolted.END));
    String bar = bar(h, "part.hot-bar");
    h.cable(
        PartKind.WIRE,
        run,
        Harness.at(fuse, "load"),
        Harness.at(bar, "in"),
        metres,
        h.basis().words().say("wire.to-bar"),
        Optional.of(Bolted.END));
    return new Feed(
        Harness.at(bar, "in"),
        Optional.of(h.vehicle().requirePart(bar)),
        OptionalDouble.of(mainFuse),
        Map.of());
  }

  /** Copper of what everything hangs on: on 6 V twice that of 12 V. Common practice. */
  private static double thick(Harness h) {
    return h.volts() == 6 ? 25 : 6;
  }

  private static String bar(Harness h, String called) {
    String bar =
        h.add("BAR", h.basis().words().say(called), Bolted.bar(), "fuse-block", h.words("why.bar"));
    h.spare(bar, Set.of("a"));
    return bar;
  }

  /** A key switch, fused from the bar. */
  static String key(Harness h, Feed hot, double rating, double contact, double metres) {
    double amps = rating > KEY_FUSE ? rating * Sizes.WORKING_SHARE : h.coilAmps();
    Harness.Fused fuse = h.fuse(hot, rating, amps, h.basis().words().say("part.key-fuse"));
    String key =
        h.add(
            "KEY",
            h.basis().words().say("part.key"),
            new PartSpec.Switch(
                List.of("30", "15", "50"),
                List.of("off", "on", "start"),
                List.of(
                    new PartSpec.SwitchContact("30", "15", Set.of("on", "start")),
                    new PartSpec.SwitchContact("30", "50", Set.of("start"))),
                PartSpec.Control.KEY,
                false,
                Harness.contactOhms(contact),
                Optional.of(contact)),
            "dash",
            h.words("why.key", contact));
    h.spare(key, Set.of("50"));
    h.wire(
        h.run(Side.HOT, fuse.amps(), rating > 10 ? thick(h) : 0),
        fuse.load(),
        Harness.at(key, "30"),
        metres,
        h.basis().words().say("wire.to-key"));
    return key;
  }

  /** A key switch that only feeds the main relay's coil, and what is live behind it. */
  static Feed coilKey(Harness h, Feed hot, double metres) {
    String key = key(h, hot, KEY_FUSE, 5, metres);
    return new Feed(
        Harness.at(key, "15"), Optional.empty(), OptionalDouble.of(KEY_FUSE), Map.of(key, "on"));
  }

  /** A bar behind the key switch itself. */
  static void keyedBar(Harness h, String key, double rating, double metres) {
    String bar = bar(h, "part.keyed-bar");
    h.wire(
        h.run(Side.KEYED, rating, thick(h)),
        Harness.at(key, "15"),
        Harness.at(bar, "in"),
        metres,
        h.basis().words().say("wire.to-keyed-bar"));
  }

  /**
   * A main relay whose coil a key feeds, and the bar behind it.
   *
   * @param coil what feeds the coil
   */
  static void relayedBar(Harness h, Feed hot, Feed coil, String ground, double metres)
      throws Problem {
    double rating = Math.max(40, hot.fuse().orElse(40));
    String relay =
        h.add(
            "K",
            h.basis().words().say("part.main-relay"),
            new PartSpec.Relay(
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Harness.HEAVY_CONTACT),
                PartSpec.Suppression.RESISTOR,
                Optional.of(rating)),
            "fuse-block",
            h.words("why.main-relay", rating) + " " + h.words("why.resistor"));
    Run run = h.run(Side.HOT, hot.fuse().orElse(rating), thick(h));
    h.cable(
        PartKind.WIRE,
        run,
        hot.bar().isPresent() ? h.leg(hot.bar().get().id()) : hot.at(),
        Harness.at(relay, "30"),
        0.3,
        h.basis().words().say("wire.to-main-relay"),
        Optional.of(Bolted.END));
    h.wire(
        h.run(Side.CONTROL, coil.fuse().orElse(KEY_FUSE)),
        coil.at(),
        Harness.at(relay, "86"),
        metres,
        h.basis().words().say("wire.key-to-main-relay"));
    h.smallGround(
        ground, coil.fuse().orElse(KEY_FUSE), Harness.at(relay, "85"), h.words("wire.coil-ground"));
    String bar = bar(h, "part.keyed-bar");
    h.cable(
        PartKind.WIRE,
        h.run(Side.KEYED, hot.fuse().orElse(rating), thick(h)),
        Harness.at(relay, "87"),
        Harness.at(bar, "in"),
        0.3,
        h.basis().words().say("wire.to-keyed-bar"),
        Optional.of(Bolted.END));
  }
}
