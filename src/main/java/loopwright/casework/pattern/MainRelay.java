package loopwright.casework.pattern;

import java.util.List;
import java.util.Optional;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Existing.Feed;
import loopwright.knowledge.PatternValues;
import loopwright.model.LoadRef;

/**
 * A main relay and a fuse block behind it, as {@link Supply} draws them, with a lamp that tells.
 */
final class MainRelay extends Pattern {
  MainRelay() {
    super("main-relay");
  }

  @Override
  void ask(Questions ask) {
    ask.name();
    boolean bar = ask.existing().hot().flatMap(Feed::bar).isPresent();
    if (!bar) {
      ask.choice("main-fuse", List.of("30", "40", "50", "60"), "40", PatternValues.COMMON_PRACTICE);
      ask.metres("to-bar", 1.5);
    }
    ask.metres("to-key", 1);
    ask.metres("to-lamp", 1);
    ask.coilGround();
  }

  @Override
  void build(Harness h, Answers a) throws Problem {
    Optional<Feed> keyed = h.existing().keyed();
    if (keyed.flatMap(Feed::bar).isPresent()) {
      throw new Problem(
          "vehicle",
          h.vehicle().name(),
          h.basis().words().say("problem.block", keyed.get().bar().get().title()));
    }
    Optional<Feed> there = h.existing().hot().filter(f -> f.bar().isPresent());
    Feed hot =
        there.isPresent()
            ? there.get()
            : Supply.hotBar(h, Double.parseDouble(a.words("main-fuse")), a.number("to-bar"));
    String ground = a.words("coil-ground");
    Feed coil = keyed.isPresent() ? keyed.get() : Supply.coilKey(h, hot, a.number("to-key"));
    Supply.relayedBar(h, hot, coil, ground, a.number("to-key"));
    Harness.Fused fuse = h.coilFuse(feed(h, true));
    String lamp = h.tellTale(h.words("main-relay.lamp"));
    h.wire(fuse, Harness.at(lamp, "in"), a.number("to-lamp"), h.words("wire.to-tell-tale"));
    h.smallGround(ground, fuse.amps(), Harness.at(lamp, "out"), h.words("wire.tell-tale-ground"));
    h.note("main-relay.note");
    h.circuit(h.words("main-relay.circuit"), List.of(LoadRef.of(lamp)), List.of(coil.on()));
  }
}
