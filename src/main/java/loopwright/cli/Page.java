package loopwright.cli;

import java.io.PrintStream;
import java.util.List;

/** Plain text in lines of a fixed greatest width. */
final class Page {
  /** Width that suits a terminal. */
  static final int USUAL = 80;

  /** Smallest width, that of a small telephone. */
  static final int NARROWEST = 30;

  /** Greatest width. */
  static final int WIDEST = 200;

  private static final int NARROW_INDENT = 4;

  private final PrintStream out;
  private final int width;

  Page(PrintStream out, int width) {
    this.out = out;
    this.width = Math.max(NARROWEST, Math.min(WIDEST, width));
  }

  int width() {
    return width;
  }

  /** A paragraph. */
  void say(String text) {
    block("", text);
  }

  /** An empty line. */
  void gap() {
    out.print('\n');
  }

  /** A prompt, without a line end. */
  void prompt(String text) {
    out.print(text);
    out.flush();
  }

  void flush() {
    out.flush();
  }

  /** A list, each item behind a dash. */
  void items(List<String> items) {
    items.forEach(item -> block("- ", item));
  }

  /** Lines behind one label. */
  void labelled(String label, List<String> texts) {
    String head = label;
    for (String text : texts) {
      block(head, text);
      head = " ".repeat(label.length());
    }
  }

  /** Text behind a label; the lines after the first stand under its beginning. */
  void block(String label, String text) {
    StringBuilder line = new StringBuilder(label);
    int indent = label.length();
    if (indent > width * 3 / 5) {
      // A long label on a small screen has a line of its own.
      print(line);
      indent = NARROW_INDENT;
      line = new StringBuilder(" ".repeat(indent));
    }
    boolean empty = true;
    for (String word : plain(text).split(" +", -1)) {
      String rest = word;
      if (!empty && line.length() + 1 + rest.length() > width) {
        print(line);
        line = new StringBuilder(" ".repeat(indent));
        empty = true;
      }
      while (line.length() + rest.length() > width && rest.length() > width - indent) {
        int room = Math.max(1, width - line.length());
        line.append(rest, 0, room);
        rest = rest.substring(room);
        print(line);
        line = new StringBuilder(" ".repeat(indent));
      }
      if (!empty) {
        line.append(' ');
      }
      line.append(rest);
      empty = false;
    }
    print(line);
  }

  private void print(StringBuilder line) {
    int end = line.length();
    while (end > 0 && line.charAt(end - 1) == ' ') {
      end--;
    }
    out.print(line.substring(0, end) + "\n");
  }

  /** Text from files may hold anything; a terminal must not obey it. */
  static String plain(String text) {
    return text.replaceAll("\\s+", " ").replaceAll("\\p{Cc}", "?").strip();
  }
}
