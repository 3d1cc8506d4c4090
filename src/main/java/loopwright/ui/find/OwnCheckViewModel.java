package loopwright.ui.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import loopwright.casework.CheckView;
import loopwright.casework.OwnCheck;
import loopwright.casework.PartView;
import loopwright.casework.PointView;
import loopwright.casework.SettingView;
import loopwright.diagnosis.CheckKind;
import loopwright.diagnosis.Seen;
import loopwright.model.LoadRef;
import loopwright.model.Setting;
import loopwright.model.TerminalRef;
import loopwright.ui.Texts;

/** A measurement of the person's own choice while it is put together. */
public final class OwnCheckViewModel {
  /** The kinds offered, in the order of their buttons. */
  public static final List<CheckKind> KINDS =
      List.of(
          CheckKind.VOLTS,
          CheckKind.MILLIVOLTS,
          CheckKind.OHMS,
          CheckKind.DIODE,
          CheckKind.LOOK,
          CheckKind.LAMP_FOR_FUSE,
          CheckKind.UNPLUG_AND_LOOK,
          CheckKind.SWAP,
          CheckKind.WIGGLE,
          CheckKind.WARM,
          CheckKind.LOAD);

  /** The steps of putting it together, in the order of the hands. */
  public enum Step {
    KIND,
    SET,
    RED,
    BLACK,
    OUT,
    PART,
    VALUE
  }

  private final List<PointView> points;
  private final List<SettingView> settings;
  private List<PartView> parts = List.of();
  private final ObjectProperty<Step> step = new SimpleObjectProperty<>(Step.KIND);
  private final ObjectProperty<CheckKind> kind = new SimpleObjectProperty<>(CheckKind.VOLTS);
  private final ObjectProperty<Optional<SettingView>> setting =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Optional<PointView>> red =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Optional<PointView>> black =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Optional<PartView>> out =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Optional<PartView>> part =
      new SimpleObjectProperty<>(Optional.empty());
  private final StringProperty search = new SimpleStringProperty("");
  private final ObservableList<String> found = FXCollections.observableArrayList();
  private final List<Object> foundItems = new ArrayList<>();

  OwnCheckViewModel(List<PointView> points, List<SettingView> settings) {
    this.points = List.copyOf(points);
    this.settings = List.copyOf(settings);
    search.addListener((o, was, is) -> look());
    step.addListener(
        (o, was, is) -> {
          search.set("");
          look();
        });
    look();
  }

  /** Starts with the set-up, black lead and kind of the proposed check, where there is one. */
  void begin(Optional<CheckView> proposed) {
    red.set(Optional.empty());
    out.set(Optional.empty());
    part.set(Optional.empty());
    kind.set(proposed.map(CheckView::kind).filter(KINDS::contains).orElse(CheckKind.VOLTS));
    if (!metered()) {
      kind.set(CheckKind.VOLTS);
    }
    black.set(proposed.flatMap(CheckView::black));
    setting.set(proposed.map(CheckView::set).or(() -> settings.stream().findFirst()));
    step.set(Step.KIND);
  }

  /** The step at hand. */
  public ObjectProperty<Step> stepProperty() {
    return step;
  }

  /** The kind of check. */
  public ObjectProperty<CheckKind> kindProperty() {
    return kind;
  }

  /** The set-up. */
  public ObjectProperty<Optional<SettingView>> settingProperty() {
    return setting;
  }

  /** Where red goes. */
  public ObjectProperty<Optional<PointView>> redProperty() {
    return red;
  }

  /** Where black goes. */
  public ObjectProperty<Optional<PointView>> blackProperty() {
    return black;
  }

  /** Offers these parts from now on. */
  void offer(List<PartView> offered) {
    parts = List.copyOf(offered);
    look();
  }

  /** The part that is out while another is looked at. */
  public ObjectProperty<Optional<PartView>> outProperty() {
    return out;
  }

  /** What can be seen in the check put together. */
  List<Seen> answers() {
    return part.get().map(p -> p.checks().getOrDefault(kind.get(), List.of())).orElse(List.of());
  }

  /** The part looked at or taken in hand. */
  public ObjectProperty<Optional<PartView>> partProperty() {
    return part;
  }

  /** What is typed to find a point, part or set-up. */
  public StringProperty searchProperty() {
    return search;
  }

  /** What the search found, in words. */
  public ObservableList<String> found() {
    return found;
  }

  /** Whether leads are used. */
  public boolean metered() {
    return kind.get().metered();
  }

  Optional<PointView> red() {
    return red.get();
  }

  Optional<PointView> black() {
    return black.get();
  }

  /** The steps of this kind of check. */
  public List<Step> steps() {
    if (metered()) {
      return List.of(Step.KIND, Step.SET, Step.RED, Step.BLACK, Step.VALUE);
    }
    return unplugs()
        ? List.of(Step.KIND, Step.SET, Step.OUT, Step.PART, Step.VALUE)
        : List.of(Step.KIND, Step.SET, Step.PART, Step.VALUE);
  }

  /** Whether something is unplugged for it. */
  public boolean unplugs() {
    return kind.get() == CheckKind.UNPLUG_AND_LOOK;
  }

  /** Goes to the next step; stays at the last. */
  public void forward() {
    int i = steps().indexOf(step.get());
    step.set(steps().get(Math.min(i + 1, steps().size() - 1)));
  }

  /** Goes to the step before. */
  public void backward() {
    int i = steps().indexOf(step.get());
    step.set(steps().get(Math.max(i - 1, 0)));
  }

  /** Chooses the found item with this index for the step at hand and goes on. */
  public void choose(int index) {
    if (index < 0 || index >= foundItems.size()) {
      return;
    }
    Object item = foundItems.get(index);
    switch (step.get()) {
      case KIND -> {
        if (item != kind.get()) {
          part.set(Optional.empty());
        }
        kind.set((CheckKind) item);
      }
      case SET -> setting.set(Optional.of((SettingView) item));
      case RED -> red.set(Optional.of((PointView) item));
      case BLACK -> black.set(Optional.of((PointView) item));
      case OUT -> out.set(Optional.of((PartView) item));
      case PART -> part.set(Optional.of((PartView) item));
      case VALUE -> {
        return;
      }
    }
    forward();
  }

  /**
   * A piece of the drawing was chosen: red goes there, then black; or it is what is taken out, then
   * what is looked at or taken in hand.
   *
   * @param id id of the part
   * @param at points where the lead is meant to go, the first that can be reached
   */
  void pick(String id, List<TerminalRef> at) {
    if (metered()) {
      point(id, at)
          .ifPresent(
              p -> {
                boolean second = step.get() == Step.BLACK;
                (second ? black : red).set(Optional.of(p));
                step.set(second ? Step.VALUE : Step.BLACK);
              });
      return;
    }
    boolean out = unplugs() && step.get() != Step.PART;
    parts.stream()
        .filter(p -> LoadRef.parse(p.subject()).part().equals(id))
        .filter(p -> out ? p.apart().isPresent() : p.checks().containsKey(kind.get()))
        .findFirst()
        .ifPresent(
            p -> {
              (out ? this.out : part).set(Optional.of(p));
              step.set(out ? Step.PART : Step.VALUE);
            });
  }

  /** The first of these points that can be reached, else the part's first. */
  private Optional<PointView> point(String id, List<TerminalRef> at) {
    List<PointView> reachable = points.stream().filter(PointView::reachable).toList();
    return at.stream()
        .flatMap(t -> reachable.stream().filter(p -> p.ref().equals(t)))
        .findFirst()
        .or(() -> reachable.stream().filter(p -> p.ref().part().equals(id)).findFirst());
  }

  /** Index among the found items of what is chosen at this step, 0 if nothing is. */
  public int chosenIndex() {
    Object chosen =
        switch (step.get()) {
          case KIND -> kind.get();
          case SET -> setting.get().orElse(null);
          case RED -> red.get().orElse(null);
          case BLACK -> black.get().orElse(null);
          case OUT -> out.get().orElse(null);
          case PART -> part.get().orElse(null);
          case VALUE -> null;
        };
    return Math.max(0, foundItems.indexOf(chosen));
  }

  /** What is still missing, in words; empty if the check can be taken. */
  Optional<String> missing() {
    if (setting.get().isEmpty()) {
      return Optional.of(Texts.of("own.setMissing"));
    }
    if (!metered()) {
      if (unplugs() && out.get().isEmpty()) {
        return Optional.of(Texts.of("own.outMissing"));
      }
      return part.get().isEmpty() ? Optional.of(Texts.of("own.partMissing")) : Optional.empty();
    }
    if (red.get().isEmpty()) {
      return Optional.of(Texts.of("own.redMissing"));
    }
    if (black.get().isEmpty()) {
      return Optional.of(Texts.of("own.blackMissing"));
    }
    return red.get().equals(black.get())
        ? Optional.of(Texts.of("own.samePoint"))
        : Optional.empty();
  }

  /** The check put together. */
  OwnCheck check() {
    Setting to = setting.get().map(SettingView::setting).orElse(Setting.REST);
    return metered()
        ? new OwnCheck(
            kind.get(),
            red.get().map(PointView::ref),
            black.get().map(PointView::ref),
            Optional.empty(),
            to)
        : new OwnCheck(
            kind.get(),
            Optional.empty(),
            Optional.empty(),
            part.get().map(PartView::subject),
            out.get().flatMap(PartView::apart).filter(p -> unplugs()).map(to::without).orElse(to));
  }

  private void look() {
    foundItems.clear();
    List<String> words = new ArrayList<>();
    String wanted = search.get().toLowerCase(Locale.ROOT).trim();
    switch (step.get()) {
      case KIND -> KINDS.forEach(k -> offer(k, Texts.of(k), wanted, words));
      case SET ->
          settings.forEach(
              s -> offer(s, s.whole().isEmpty() ? Texts.of("own.atRest") : join(s), wanted, words));
      case RED, BLACK ->
          points.stream()
              .filter(PointView::reachable)
              .filter(p -> pointSearch(p).contains(wanted))
              .forEach(p -> offer(p, pointWords(p), "", words));
      case OUT ->
          parts.stream()
              .filter(p -> p.apart().isPresent())
              .forEach(p -> offer(p, p.title(), wanted, words));
      case PART ->
          parts.stream()
              .filter(p -> p.checks().containsKey(kind.get()))
              .forEach(p -> offer(p, p.title(), wanted, words));
      case VALUE -> {}
    }
    found.setAll(words);
  }

  private static String join(SettingView setting) {
    return String.join(", ", setting.whole());
  }

  private static String pointSearch(PointView p) {
    return (p.ref() + " " + p.title() + " " + p.label()).toLowerCase(Locale.ROOT);
  }

  private static String pointWords(PointView p) {
    return p.label().isEmpty() ? p.title() : Texts.of("own.pointLabel", p.title(), p.label());
  }

  private void offer(Object item, String words, String wanted, List<String> into) {
    if (words.toLowerCase(Locale.ROOT).contains(wanted)) {
      foundItems.add(item);
      into.add(words);
    }
  }
}
