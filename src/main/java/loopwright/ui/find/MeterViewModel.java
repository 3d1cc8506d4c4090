package loopwright.ui.find;

import java.util.Objects;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import loopwright.casework.Problem;
import loopwright.casework.feed.MeterFeed;
import loopwright.casework.feed.MeterPort;
import loopwright.casework.feed.MeterState;
import loopwright.casework.feed.MeterWords;
import loopwright.diagnosis.CheckKind;
import loopwright.model.Language;
import loopwright.ui.Preferences;
import loopwright.ui.Texts;

/** A meter that sends its readings: where it is connected, and how it stands. */
public final class MeterViewModel {
  private final Preferences preferences;
  private final MeterWords words = new MeterWords(Language.inUse().locale());
  private final StringProperty port = new SimpleStringProperty("");
  private final ReadOnlyStringWrapper problem = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper steady = new ReadOnlyBooleanWrapper();
  private Optional<MeterFeed.Opener> opener = Optional.empty();
  private Optional<MeterPort> connected = Optional.empty();
  private Optional<MeterFeed> feed = Optional.empty();

  /**
   * Makes it; nothing is connected before {@link #connect}.
   *
   * @param preferences remembers the port
   */
  public MeterViewModel(Preferences preferences) {
    this.preferences = Objects.requireNonNull(preferences, "preferences");
    preferences.read(Preferences.Item.METER_PORT).ifPresent(port::set);
    port.addListener(o -> problem.set(""));
  }

  /** Sets what connects; without it no meter is there. */
  public void through(MeterFeed.Opener connecting) {
    opener = Optional.of(connecting);
  }

  /** The port as it is typed; empty for none. */
  public StringProperty portProperty() {
    return port;
  }

  /** Why the port can't be used; empty if it can. */
  public ReadOnlyStringProperty problemProperty() {
    return problem.getReadOnlyProperty();
  }

  /** How the meter stands, in words; empty if none is connected. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** Whether its reading can be taken. */
  public ReadOnlyBooleanProperty steadyProperty() {
    return steady.getReadOnlyProperty();
  }

  /** Whether a port is connected, or tried to be. */
  public boolean present() {
    return feed.isPresent();
  }

  /**
   * Connects to the port that was typed, unless it is connected; lets go of another.
   *
   * @return whether the port could be understood
   */
  public boolean connect() {
    Optional<MeterPort> next;
    try {
      next = port.get().isBlank() ? Optional.empty() : Optional.of(MeterPort.parse(port.get()));
    } catch (Problem p) {
      problem.set(Texts.of("entry.problem", p.value(), p.accepted()));
      return false;
    }
    if (!next.equals(connected)) {
      close();
      connected = next;
      feed = next.flatMap(p -> opener.map(o -> o.open(p)));
      preferences.keep(Preferences.Item.METER_PORT, port.get().strip());
    }
    look();
    return true;
  }

  /** The meter is to measure what this kind of check asks for. */
  public void follow(CheckKind kind) {
    MeterFeed.function(kind).ifPresent(f -> feed.ifPresent(m -> m.ask(f)));
    look();
  }

  /** Looks how it stands now; to be done a few times a second while it is shown. */
  public void look() {
    Optional<MeterState> state = feed.map(MeterFeed::state);
    said.set(state.map(words::of).orElse(""));
    steady.set(state.filter(MeterState.Steady.class::isInstance).isPresent());
  }

  /** The steady reading, if there is one that wasn't taken yet. */
  public Optional<String> take() {
    Optional<String> taken = feed.flatMap(MeterFeed::take);
    look();
    return taken;
  }

  /** The steady reading, if it is another than the one taken last. */
  public Optional<String> changed() {
    Optional<String> taken = feed.flatMap(MeterFeed::changed);
    look();
    return taken;
  }

  /** Lets the meter go. */
  public void close() {
    feed.ifPresent(MeterFeed::close);
    feed = Optional.empty();
    connected = Optional.empty();
    look();
  }
}
