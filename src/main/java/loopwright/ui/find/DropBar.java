package loopwright.ui.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import loopwright.casework.Drops;
import loopwright.model.Language;
import loopwright.ui.Texts;
import loopwright.ui.drawing.LoopLayout;
import loopwright.ui.widget.Parts;

/**
 * Where the volts go, from battery to load and back: a bar whose shares are as wide as the volts
 * lost in them, and below it a line on the share that loses more than it should.
 */
final class DropBar extends VBox {
  private static final double LEAST_SHARE = 0.02;

  private final Label words = Parts.line("", "drop-words");

  DropBar() {
    setId("drops");
    getStyleClass().add("drop-box");
    show(Optional.empty());
  }

  void show(Optional<Drops> drops) {
    Parts.shown(this, drops.isPresent());
    getChildren().clear();
    drops.ifPresent(
        d -> {
          words.setText(sentence(d));
          words.setMinWidth(0);
          Bar bar = new Bar(d);
          bar.setAccessibleText(
              d.shares().stream().map(DropBar::spoken).collect(Collectors.joining("; ")));
          getChildren().addAll(bar, words);
        });
  }

  private static String sentence(Drops drops) {
    return drops
        .worst()
        .map(s -> Texts.of("drops.worst", s.from(), s.to(), volts(s), volts(s.healthy())))
        .orElseGet(() -> Texts.of("drops.none"));
  }

  private static String spoken(Drops.Share share) {
    return Texts.of("drops.share", share.from(), share.to(), volts(share));
  }

  private static String volts(Drops.Share share) {
    String volts = volts(share.measured());
    return share.about() ? Language.about(volts) : volts;
  }

  private static String volts(double volts) {
    return LoopLayout.volts(volts) + " V";
  }

  /** The bar itself. */
  private static final class Bar extends Region {
    private final List<Label> labels = new ArrayList<>();
    private final List<Double> widths = new ArrayList<>();

    Bar(Drops drops) {
      getStyleClass().add("drop-bar");
      for (Drops.Share share : drops.shares()) {
        Label label = Parts.line(volts(share.measured()));
        label.getStyleClass().addAll("drop-share", side(share));
        if (drops.worst().filter(share::equals).isPresent()) {
          label.getStyleClass().add("drop-worst");
        }
        label.setMinWidth(0);
        labels.add(label);
        widths.add(Math.abs(share.measured()));
      }
      getChildren().addAll(labels);
    }

    private static String side(Drops.Share share) {
      return switch (share.side()) {
        case FEED -> "drop-feed";
        case LOAD -> "drop-load";
        case RETURN -> "drop-return";
      };
    }

    @Override
    protected double computePrefHeight(double width) {
      return labels.stream().mapToDouble(l -> l.prefHeight(-1)).max().orElse(0);
    }

    @Override
    protected double computeMinHeight(double width) {
      return computePrefHeight(width);
    }

    @Override
    protected double computePrefWidth(double height) {
      return 0;
    }

    @Override
    protected void layoutChildren() {
      double whole = widths.stream().mapToDouble(Double::doubleValue).sum();
      double least = LEAST_SHARE * getWidth();
      double shared = getWidth() - least * widths.size();
      double x = 0;
      for (int i = 0; i < labels.size(); i++) {
        double width = least + (whole > 0 ? shared * widths.get(i) / whole : 0);
        Label label = labels.get(i);
        label.resizeRelocate(snapPositionX(x), 0, snapSizeX(width), getHeight());
        // Half a figure would mislead; the words beside the bar say it whole.
        Node figure = label.lookup(".text");
        if (figure != null) {
          figure.setVisible(label.prefWidth(-1) <= label.getWidth());
        }
        x += width;
      }
    }
  }
}
