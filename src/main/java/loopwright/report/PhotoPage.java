package loopwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import loopwright.casework.CaseEvent.Photographed;
import loopwright.casework.Phrases;
import loopwright.casework.Picture;
import loopwright.report.PageSize.Turn;

/** The photos of a case on one page, under each what it shows. */
final class PhotoPage {
  /** Most that are shown: smaller ones would show nothing. */
  private static final int MOST = 6;

  private static final double GAP = 12;
  private static final double LINE = Paper.SMALL * Typeface.LEADING;
  private static final int CAPTION_LINES = 2;

  private final Paper paper;
  private final Phrases phrases;

  PhotoPage(Paper paper, Phrases phrases) {
    this.paper = paper;
    this.phrases = phrases;
  }

  private record Shown(Picture picture, String words) {}

  /** Adds a page; where none of the photos can be shown, only a line that says so. */
  void add(List<Photographed> photos, Function<String, Optional<Picture>> pictures) {
    if (photos.isEmpty()) {
      return;
    }
    List<Shown> shown = new ArrayList<>();
    List<String> gone = new ArrayList<>();
    List<String> more = new ArrayList<>();
    for (Photographed photo : photos) {
      if (shown.size() == MOST) {
        more.add(photo.file());
        continue;
      }
      String words = photo.caption().isEmpty() ? photo.file() : photo.caption();
      pictures
          .apply(photo.file())
          .ifPresentOrElse(p -> shown.add(new Shown(p, words)), () -> gone.add(photo.file()));
    }
    if (!shown.isEmpty()) {
      paper.newPage(Turn.UPRIGHT);
    }
    paper.heading(phrases.say("record.photos"));
    if (!gone.isEmpty()) {
      paper.paragraph(phrases.say("record.photos-gone", String.join(", ", gone)));
    }
    if (!more.isEmpty()) {
      paper.paragraph(phrases.say("record.photos-more", String.join(", ", more)));
    }
    draw(shown);
  }

  private void draw(List<Shown> shown) {
    int columns = shown.size() <= 2 ? 1 : 2;
    int rows = (shown.size() + columns - 1) / columns;
    double top = paper.y();
    double width = (paper.right() - Paper.MARGIN + GAP) / columns - GAP;
    double high = (paper.bottom() - top + GAP) / Math.max(1, rows) - GAP;
    double words = CAPTION_LINES * LINE;
    for (int i = 0; i < shown.size(); i++) {
      double x = Paper.MARGIN + (i % columns) * (width + GAP);
      double y = top + (i / columns) * (high + GAP);
      Box photo = paper.leaf().photo(shown.get(i).picture(), new Box(x, y, width, high - words));
      List<String> lines = Typeface.REGULAR.wrap(shown.get(i).words(), Paper.SMALL, width);
      for (int line = 0; line < Math.min(lines.size(), CAPTION_LINES); line++) {
        double down = photo.bottom() + line * LINE;
        paper.leaf().text(lines.get(line), Typeface.REGULAR, Paper.SMALL, x, down);
      }
    }
  }
}
