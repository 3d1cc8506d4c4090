package loopwright.ui.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.Shape;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import loopwright.casework.LoopView;
import loopwright.casework.LoopView.Standing;
import loopwright.model.TerminalRef;
import loopwright.ui.Fonts;
import loopwright.ui.Texts;
import loopwright.ui.drawing.LoopPlan.Box;
import loopwright.ui.drawing.LoopPlan.Label;
import loopwright.ui.widget.Parts;

/**
 * A loop drawn from battery to ground with its voltage staircase underneath. Suspicion is weight
 * and hatching, a cleared piece thin with a tick; colours come from the style sheet and only repeat
 * that.
 */
public final class LoopDrawing extends Region {
  private final Pane canvas = new Pane();
  private final Rectangle aimed = new Rectangle();
  private final ScrollPane scroll = new ScrollPane(canvas);
  private final ObjectProperty<Optional<LoopView>> loop =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Optional<TerminalRef>> red =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Optional<TerminalRef>> black =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<LoopLayout.Folding> folding =
      new SimpleObjectProperty<>(LoopLayout.Folding.PART_IN_QUESTION);
  private final DoubleProperty em = new SimpleDoubleProperty(16);
  private final ReadOnlyObjectWrapper<Optional<LoopPlan>> plan =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<Optional<String>> marked =
      new SimpleObjectProperty<>(Optional.empty());
  private Optional<LoopLayout.Request> drawn = Optional.empty();
  private Optional<String> drawnMark = Optional.empty();
  private double drawnEm;
  private boolean live;

  /** Makes an empty drawing. */
  public LoopDrawing() {
    getStyleClass().add("loop-drawing");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    Parts.scrollSideways(scroll);
    // A press beside the last piece still falls on the canvas.
    scroll.setFitToWidth(true);
    canvas.getStyleClass().add("loop-canvas");
    aimed.getStyleClass().add("piece-aimed");
    aimed.setMouseTransparent(true);
    aimed.setVisible(false);
    getChildren().add(scroll);
    loop.addListener(o -> requestLayout());
    red.addListener(o -> requestLayout());
    black.addListener(o -> requestLayout());
    folding.addListener(o -> requestLayout());
    em.addListener(o -> requestLayout());
    marked.addListener(o -> requestLayout());
  }

  /** Id of the part that is marked. */
  public ObjectProperty<Optional<String>> markedProperty() {
    return marked;
  }

  /**
   * A click on a piece.
   *
   * @param part the part's id
   * @param points the points of the node that is nearer, the part's own first
   * @param shift whether the Shift key was held
   */
  public record Click(String part, List<TerminalRef> points, boolean shift) {
    /** Copies the list. */
    public Click {
      points = List.copyOf(points);
    }
  }

  /** What happens when a piece is clicked; it gets the part's id. */
  public void onPiece(Consumer<String> action) {
    onClick(click -> action.accept(click.part()));
  }

  /** What happens when a piece is clicked. */
  public void onClick(Consumer<Click> action) {
    live(true);
    canvas.setOnMouseClicked(
        e ->
            aimedAt(e.getX(), e.getY())
                .map(
                    piece ->
                        new Click(
                            piece.view().part(),
                            points(piece, e.getX() / em.get() > piece.cell().centreX()),
                            e.isShiftDown()))
                .ifPresent(action));
    canvas.setOnMouseMoved(e -> aim(aimedAt(e.getX(), e.getY())));
    canvas.setOnMouseExited(e -> aim(Optional.empty()));
  }

  /** Whether pieces can be clicked now. */
  public void live(boolean is) {
    live = is;
    aim(Optional.empty());
  }

  /**
   * The piece that a press takes.
   *
   * @param x pixels from the left of the whole drawing
   * @param y pixels from its top
   */
  public Optional<LoopPlan.Piece> aimedAt(double x, double y) {
    return plan.get().filter(p -> live).flatMap(p -> Aim.at(p, x / em.get(), y / em.get()));
  }

  /** Shows what a press would take. */
  private void aim(Optional<LoopPlan.Piece> at) {
    canvas.setCursor(at.isPresent() ? Cursor.HAND : null);
    aimed.setVisible(at.isPresent());
    at.ifPresent(piece -> frame(aimed, piece.cell(), em.get()));
  }

  /** Lays a frame round a piece. */
  private static void frame(Rectangle frame, Box c, double u) {
    frame.setX((c.x() + 0.1) * u);
    frame.setY((c.y() + 0.1) * u);
    frame.setWidth((c.width() - 0.2) * u);
    frame.setHeight((c.height() - 0.2) * u);
    frame.setArcWidth(0.5 * u);
    frame.setArcHeight(0.5 * u);
  }

  /** The points of the node before or behind a piece. */
  private List<TerminalRef> points(LoopPlan.Piece piece, boolean behind) {
    List<TerminalRef> points = new ArrayList<>();
    loop.get().stream()
        .flatMap(l -> Stream.concat(Stream.of(l), l.branches().stream()))
        .filter(l -> l.pieces().indexOf(piece.view()) == piece.index())
        .map(l -> l.stairs().get(piece.index() + (behind ? 1 : 0)))
        .findFirst()
        .ifPresent(
            s -> {
              points.add(s.point());
              points.addAll(s.others());
            });
    points.sort(Comparator.comparing(t -> !t.part().equals(piece.view().part())));
    return points;
  }

  private static List<LoopPlan.Piece> all(LoopPlan p) {
    return p.allPieces().toList();
  }

  /** The loop to draw. */
  public ObjectProperty<Optional<LoopView>> loopProperty() {
    return loop;
  }

  /** Where the red lead belongs. */
  public ObjectProperty<Optional<TerminalRef>> redProperty() {
    return red;
  }

  /** Where the black lead belongs. */
  public ObjectProperty<Optional<TerminalRef>> blackProperty() {
    return black;
  }

  /** Whether pieces far from the question may be folded. */
  public ObjectProperty<LoopLayout.Folding> foldingProperty() {
    return folding;
  }

  /** Pixels of one em. */
  public DoubleProperty emProperty() {
    return em;
  }

  /** Where everything was laid. */
  public ReadOnlyObjectProperty<Optional<LoopPlan>> planProperty() {
    return plan.getReadOnlyProperty();
  }

  @Override
  protected void layoutChildren() {
    double w = getWidth();
    double h = getHeight();
    scroll.resizeRelocate(0, 0, w, h);
    draw(w, h);
  }

  private void draw(double w, double h) {
    if (loop.get().isEmpty() || w < 1 || h < 1) {
      canvas.getChildren().clear();
      plan.set(Optional.empty());
      drawn = Optional.empty();
      return;
    }
    double unit = em.get();
    LoopLayout.Request request = request(w, h, unit);
    Optional<LoopLayout.Request> now = Optional.of(request);
    if (same(now) && drawnEm == unit && drawnMark.equals(marked.get())) {
      return;
    }
    LoopPlan next = LoopLayout.of(request);
    if (next.width() * unit > w) {
      next = LoopLayout.of(request(w, h - Parts.FINGER, unit));
    }
    drawn = now;
    drawnEm = unit;
    drawnMark = marked.get();
    plan.set(Optional.of(next));
    new Painter(next, unit).paint();
    aim(Optional.empty());
    setAccessibleText(inWords(next));
    scrollToLead(next, w / unit);
    scrollToMark(next, w / unit);
  }

  private LoopLayout.Request request(double w, double h, double unit) {
    return new LoopLayout.Request(
        loop.get().orElseThrow(),
        Math.max(10, w / unit - 0.2),
        Math.max(4, h / unit - 0.2),
        red.get(),
        black.get(),
        folding.get(),
        this::textWidth);
  }

  private boolean same(Optional<LoopLayout.Request> now) {
    return drawn.isPresent()
        && drawn.get().loop().equals(now.orElseThrow().loop())
        && drawn.get().width() == now.get().width()
        && drawn.get().height() == now.get().height()
        && drawn.get().red().equals(now.get().red())
        && drawn.get().black().equals(now.get().black())
        && drawn.get().folding() == now.get().folding();
  }

  private void scrollToLead(LoopPlan p, double room) {
    double x =
        p.nodes().stream()
            .filter(n -> n.lead().equals(Optional.of(LoopPlan.Lead.RED)))
            .mapToDouble(LoopPlan.Node::x)
            .findFirst()
            .orElse(0);
    scrollTo(x, p, room);
  }

  private void scrollToMark(LoopPlan p, double room) {
    all(p).stream()
        .filter(piece -> marked.get().equals(Optional.of(piece.view().part())))
        .mapToDouble(piece -> piece.cell().centreX())
        .findFirst()
        .ifPresent(x -> scrollTo(x, p, room));
  }

  private void scrollTo(double x, LoopPlan p, double room) {
    double over = p.width() - room;
    scroll.setHvalue(over <= 0 ? 0 : Math.max(0, Math.min(1, (x - room / 2) / over)));
  }

  /** Scrolls by a share of what is seen. */
  public void scrollBy(double share) {
    scroll.setHvalue(Math.max(0, Math.min(1, scroll.getHvalue() + share)));
  }

  private double textWidth(String text, double size) {
    Text measured = new Text(text);
    measured.setFont(Font.font(Fonts.FAMILY, FontWeight.BOLD, 16 * size));
    return measured.getLayoutBounds().getWidth() / 16;
  }

  private String inWords(LoopPlan p) {
    return p.title()
        + ": "
        + p.pieces().stream()
            .map(LoopPlan.Piece::view)
            .map(
                v ->
                    marked.get().equals(Optional.of(v.part()))
                        ? Texts.of("drawing.marked", v.title())
                        : Texts.of("drawing.piece", v.title(), Texts.of(v.standing())))
            .collect(Collectors.joining(", "));
  }

  /** Turns a plan into shapes. */
  private final class Painter {
    private final LoopPlan p;
    private final double u;
    private final List<Node> out = new ArrayList<>();

    Painter(LoopPlan p, double u) {
      this.p = p;
      this.u = u;
    }

    void paint() {
      double right = p.nodes().get(p.nodes().size() - 1).x() + 0.9;
      boolean staircase = loop.get().map(LoopView::hasStaircase).orElse(false);
      if (staircase) {
        guides();
      }
      p.titleLines().forEach(l -> text(l, TextAlignment.LEFT, "loop-title"));
      axis(right);
      returnPath(right);
      battery();
      if (staircase) {
        staircase();
      }
      mark();
      for (LoopPlan.Piece piece : p.pieces()) {
        piece(piece, p.lineY());
      }
      p.folds().forEach(this::fold);
      for (LoopPlan.Row row : p.rows()) {
        row(row);
      }
      p.nodes().forEach(this::node);
      out.add(aimed);
      canvas.getChildren().setAll(out);
      canvas.setMinSize(p.width() * u, p.height() * u);
      canvas.setPrefSize(p.width() * u, p.height() * u);
    }

    /** A frame round the pieces of the part that is marked. */
    private void mark() {
      for (LoopPlan.Piece piece : all(p)) {
        if (marked.get().equals(Optional.of(piece.view().part()))) {
          Rectangle round = new Rectangle();
          frame(round, piece.cell(), u);
          add(round, "piece-marked");
        }
      }
    }

    private <S extends Shape> S add(S shape, String... classes) {
      shape.getStyleClass().addAll(classes);
      out.add(shape);
      return shape;
    }

    private void line(double x1, double y1, double x2, double y2, String... classes) {
      add(new Line(x1 * u, y1 * u, x2 * u, y2 * u), classes);
    }

    private Text text(Label label, TextAlignment to, String... classes) {
      Box box = label.box();
      Text text = new Text(label.text());
      text.getStyleClass().add("drawing-text");
      text.setStyle("-fx-font-size: " + LoopLayout.SMALL * u + "px;");
      text.setTextOrigin(VPos.CENTER);
      text.setTextAlignment(to);
      text.setWrappingWidth(box.width() * u);
      text.setX(box.x() * u);
      text.setY((box.y() + box.height() / 2) * u);
      text.getStyleClass().addAll(classes);
      out.add(text);
      return text;
    }

    private void guides() {
      for (LoopPlan.Node n : p.nodes()) {
        double end = Math.max(p.railY(), n.band().bottom());
        line(n.x(), p.lineY(), n.x(), end, "guide");
      }
    }

    private void axis(double right) {
      double x = p.nodes().get(0).x() - 0.75;
      for (LoopPlan.Tick tick : p.ticks()) {
        text(tick.label(), TextAlignment.RIGHT, "axis-text");
        line(x, tick.y(), right - 0.3, tick.y(), "axis-line");
      }
    }

    private void returnPath(double right) {
      double first = p.nodes().get(0).x();
      double centre = p.battery().centreX();
      line(centre, p.lineY(), first, p.lineY(), "wire-line");
      double last = p.nodes().get(p.nodes().size() - 1).x();
      line(last, p.lineY(), right, p.lineY(), "wire-line");
      line(right, p.lineY(), right, p.railY(), "wire-line");
      line(centre, p.railY(), right, p.railY(), "rail");
      double y = p.railY();
      for (int i = 0; i < 3; i++) {
        double half = 0.55 - 0.17 * i;
        line(right - half, y + 0.2 * i, right + half, y + 0.2 * i, "rail");
      }
    }

    private void battery() {
      double x = p.battery().centreX();
      double middle = p.battery().y() + p.battery().height() / 2;
      line(x, p.lineY(), x, middle - 0.2, "wire-line");
      line(x, middle + 0.2, x, p.railY(), "wire-line");
      boolean positiveUp = positiveUp();
      double longY = positiveUp ? middle - 0.2 : middle + 0.2;
      double shortY = positiveUp ? middle + 0.2 : middle - 0.2;
      line(x - 0.9, longY, x + 0.9, longY, "battery-plate");
      line(x - 0.45, shortY, x + 0.45, shortY, "battery-plate", "battery-minus");
      sign("+", x - 1.75, longY);
      sign("−", x - 1.75, shortY + (positiveUp ? 0.1 : -0.1));
    }

    /** By the volts axis; without one, by the post that the loop begins at. */
    private boolean positiveUp() {
      if (!p.ticks().isEmpty()) {
        return p.ticks().get(p.ticks().size() - 1).volts() > 0;
      }
      LoopView.Stair first = p.nodes().get(0).view();
      return !first.point().terminal().equals("neg")
          && first.others().stream().noneMatch(t -> t.terminal().equals("neg"));
    }

    private void sign(String sign, double x, double y) {
      text(new Label(sign, new Box(x, y - 0.6, 0.6, 1.2)), TextAlignment.CENTER, "axis-text");
    }

    private void staircase() {
      Polyline healthy = new Polyline();
      for (LoopPlan.Node n : p.nodes()) {
        double y = n.band().y() + n.band().height() / 2;
        healthy.getPoints().addAll((n.x() - 0.55) * u, y * u, (n.x() + 0.55) * u, y * u);
      }
      add(healthy, "healthy-line");
      for (LoopPlan.Node n : p.nodes()) {
        Box b = n.band();
        Rectangle band = new Rectangle(b.x() * u, b.y() * u, b.width() * u, b.height() * u);
        band.setArcWidth(0.2 * u);
        band.setArcHeight(0.2 * u);
        add(band, "healthy-band");
      }
      Polyline measured = new Polyline();
      for (LoopPlan.Node n : p.nodes()) {
        if (!n.points().isEmpty()) {
          double y = n.points().get(n.points().size() - 1).y();
          measured.getPoints().addAll(n.x() * u, y * u);
        }
      }
      if (measured.getPoints().size() >= 4) {
        add(measured, "measured-line");
      }
      toGroundedPost(measured);
    }

    /** From the last measured point to the grounded post, which is 0 V by its meaning. */
    private void toGroundedPost(Polyline measured) {
      int size = measured.getPoints().size();
      double end = p.nodes().get(p.nodes().size() - 1).x() * u;
      if (size >= 2 && measured.getPoints().get(size - 2) < end - 1) {
        add(
            new Line(
                measured.getPoints().get(size - 2),
                measured.getPoints().get(size - 1),
                end,
                p.railY() * u),
            "measured-line",
            "measured-end");
      }
    }

    private void piece(LoopPlan.Piece piece, double lineY) {
      LoopView.PieceView v = piece.view();
      int tier = tier(v);
      String standing = "standing-" + v.standing().name().toLowerCase(java.util.Locale.ROOT);
      Box c = piece.cell();
      if (v.standing() == Standing.CONDEMNED || tier > 0) {
        Box s = piece.symbol();
        double top = s.y() - 0.12;
        double bottom = s.bottom() + 0.12;
        Rectangle halo =
            new Rectangle((c.x() + 0.28) * u, top * u, (c.width() - 0.56) * u, (bottom - top) * u);
        halo.setArcWidth(0.5 * u);
        halo.setArcHeight(0.5 * u);
        add(halo, "halo", "tier-" + tier, standing);
      }
      Box s = piece.symbol();
      Group symbol = new Group();
      symbol.getStyleClass().addAll("piece", standing, "tier-" + tier);
      symbol.getChildren().add(styled(new Line(c.x() * u, lineY * u, s.x() * u, lineY * u)));
      symbol
          .getChildren()
          .add(styled(new Line(s.right() * u, lineY * u, c.right() * u, lineY * u)));
      symbol.getChildren().addAll(Symbols.of(v, s, u));
      out.add(symbol);
      Text id = text(piece.id(), TextAlignment.CENTER, "piece-id", standing);
      if (v.standing() == Standing.CLEARED) {
        double w = Math.min(textWidth(piece.id().text(), LoopLayout.SMALL), c.width());
        tick(c.centreX() + w / 2 + 0.12, piece.id().box().y() + 0.3);
      } else if (v.standing() == Standing.CONDEMNED) {
        double w = Math.min(textWidth(piece.id().text(), LoopLayout.SMALL), c.width());
        cross(c.centreX() + w / 2 + 0.2, piece.id().box().y() + 0.3);
      }
      id.setMouseTransparent(true);
      for (Label line : piece.name()) {
        text(line, TextAlignment.CENTER, "piece-name", standing);
      }
    }

    private Line styled(Line line) {
      line.getStyleClass().add("symbol");
      return line;
    }

    private void tick(double x, double y) {
      add(
          new Polyline(x * u, (y + 0.3) * u, (x + 0.2) * u, (y + 0.55) * u, (x + 0.6) * u, y * u),
          "tick-mark");
    }

    private void cross(double x, double y) {
      line(x, y, x + 0.55, y + 0.55, "cross-mark");
      line(x, y + 0.55, x + 0.55, y, "cross-mark");
    }

    private void fold(LoopPlan.Fold fold) {
      Box c = fold.cell();
      line(c.x(), p.lineY(), c.right(), p.lineY(), "fold-line");
      Rectangle box =
          new Rectangle((c.x() + 0.5) * u, (p.lineY() - 0.65) * u, (c.width() - 1) * u, 1.3 * u);
      box.setArcWidth(0.6 * u);
      box.setArcHeight(0.6 * u);
      add(box, "fold-box");
      text(
          new Label(
              Texts.of("drawing.fold", fold.label().text()),
              new Box(c.x() + 0.5, p.lineY() - 0.65, c.width() - 1, 1.3)),
          TextAlignment.CENTER,
          "fold-text");
    }

    private void row(LoopPlan.Row row) {
      row.titleLines().forEach(l -> text(l, TextAlignment.LEFT, "row-title"));
      row.link()
          .ifPresent(
              l -> {
                double middle = (l.fromY() + l.toY()) / 2;
                line(l.fromX(), l.fromY(), l.fromX(), middle, "link-line");
                line(l.fromX(), middle, l.toX(), middle, "link-line");
                line(l.toX(), middle, l.toX(), l.toY(), "link-line");
              });
      for (LoopPlan.Piece piece : row.pieces()) {
        piece(piece, row.lineY());
      }
      for (LoopPlan.RowNode n : row.nodes()) {
        add(new Circle(n.x() * u, row.lineY() * u, 0.14 * u), "node-dot");
      }
    }

    private void node(LoopPlan.Node n) {
      Circle dot = new Circle(n.x() * u, p.lineY() * u, 0.17 * u);
      add(dot, "node-dot", n.view().reachable() ? "reachable" : "buried");
      for (LoopPlan.Point point : n.points()) {
        Circle ring = new Circle(n.x() * u, point.y() * u, 0.5 * u);
        add(ring, "measured-dot");
        text(
            new Label(
                Integer.toString(point.reading()), new Box(n.x() - 0.5, point.y() - 0.5, 1, 1)),
            TextAlignment.CENTER,
            "measured-number");
      }
      n.value().ifPresent(v -> text(v, TextAlignment.CENTER, "measured-value"));
      n.lead().ifPresent(lead -> lead(lead, n));
    }

    private void lead(LoopPlan.Lead lead, LoopPlan.Node n) {
      boolean redLead = lead == LoopPlan.Lead.RED;
      Box b = n.leadBox();
      line(n.x(), b.bottom() - 0.1, n.x(), p.lineY(), redLead ? "probe-red" : "probe-black");
      if (redLead) {
        Rectangle flag =
            new Rectangle(b.x() * u, b.y() * u, b.width() * u, (b.height() - 0.25) * u);
        flag.setArcWidth(0.3 * u);
        flag.setArcHeight(0.3 * u);
        add(flag, "lead-red");
      } else {
        add(
            new Circle(
                b.centreX() * u, (b.y() + (b.height() - 0.25) / 2) * u, (b.width() / 2 - 0.1) * u),
            "lead-black");
      }
      Text letter =
          text(
              new Label(
                  Texts.of(redLead ? "lead.red.mark" : "lead.black.mark"),
                  new Box(b.x(), b.y(), b.width(), b.height() - 0.25)),
              TextAlignment.CENTER,
              "lead-letter",
              redLead ? "on-red" : "on-black");
      letter.setStyle("-fx-font-size: " + u + "px;");
    }
  }

  /** How strongly a piece is suspected: 0 hardly, 3 most. */
  static int tier(LoopView.PieceView piece) {
    if (piece.standing() == Standing.CLEARED) {
      return 0;
    }
    if (piece.standing() == Standing.CONDEMNED) {
      return 3;
    }
    double belief = piece.belief();
    return belief >= 0.4 ? 3 : belief >= 0.1 ? 2 : belief >= 0.02 ? 1 : 0;
  }
}
