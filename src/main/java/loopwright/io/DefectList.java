package loopwright.io;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Collects what is wrong with one file, and knows which line each path of it is on. */
final class DefectList {
  /** Defects listed of one file; the rest are counted. */
  static final int MOST = 1_000;

  /** Longest name of an object that is told whole, in characters. */
  private static final int LONGEST_OBJECT = 200;

  /** Stands for an object that only the reader of the format can name. */
  private static final String UNNAMED = "";

  private final String file;
  private final Map<String, Integer> lines = new LinkedHashMap<>();
  private final List<Entry> entries = new ArrayList<>();
  private final Set<String> paths = new HashSet<>();
  private final Set<String> touched = new HashSet<>();

  private final Map<String, String> objects = new HashMap<>();
  private int more;

  private record Entry(
      String path, int line, String object, String value, String limit, String what) {}

  DefectList(String file) {
    this.file = file;
  }

  /** Notes the lines of a value and of all in it. */
  void locate(JsonValue root) {
    locate(root, "");
  }

  private void locate(JsonValue value, String path) {
    lines.put(path, value.line());
    if (value instanceof JsonValue.Fields fields) {
      fields.values().forEach((name, inner) -> locate(inner, child(path, name)));
    } else if (value instanceof JsonValue.Items items) {
      for (int i = 0; i < items.values().size(); i++) {
        locate(items.values().get(i), child(path, i));
      }
    }
  }

  /** Adds a defect; {@code what} follows the object's name in the message. */
  void add(String path, String object, String value, String limit, String what) {
    addAt(path, line(path), object, value, limit, what);
  }

  /** The same at a known line; 0 where the file has none. */
  void addAt(String path, int line, String object, String value, String limit, String what) {
    paths.add(path);
    for (String at = path; touched.add(at) && !at.isEmpty(); ) {
      at = parent(at);
    }
    if (entries.size() < MOST) {
      entries.add(new Entry(path, line, known(object), value, limit, what));
    } else {
      more++;
    }
  }

  /** What an object is called may be somebody's cell of any length. */
  private static String known(String object) {
    return object.length() <= LONGEST_OBJECT ? object : JsonValue.shorten(object);
  }

  /**
   * The same about an object that is not known by name yet: it is called as {@link #name} says, or
   * by its path.
   */
  void addUnnamed(String path, int line, String value, String limit, String what) {
    addAt(path, line, UNNAMED, value, limit, what);
  }

  /** Says what the object at a path is called. */
  void name(String path, String object) {
    objects.put(path, object);
  }

  /** Whether something is already known to be wrong at this path or at what it lies in. */
  boolean covers(String path) {
    String at = path;
    while (!at.isEmpty()) {
      if (paths.contains(at)) {
        return true;
      }
      at = parent(at);
    }
    return false;
  }

  /** Whether something is already known to be wrong at this path or anywhere in it. */
  boolean touches(String path) {
    return touched.contains(path);
  }

  boolean isEmpty() {
    return entries.isEmpty();
  }

  /** Everything, in the order of the file. */
  List<Defect> all() {
    List<Entry> sorted = new ArrayList<>(entries);
    sorted.sort((a, b) -> Integer.compare(a.line, b.line));
    List<Defect> all = new ArrayList<>(sorted.stream().map(this::defect).toList());
    if (more > 0) {
      String object = FileWords.say("file");
      String what = FileWords.say("defects.more", Integer.toString(more));
      all.add(
          new Defect(
              object,
              FileWords.say("defects", Integer.toString(MOST + more)),
              FileWords.say("defects.listed", Integer.toString(MOST)),
              file,
              object + ": " + what + " [" + file + "]"));
    }
    return List.copyOf(all);
  }

  private Defect defect(Entry e) {
    String object = e.object.equals(UNNAMED) ? objectAt(e.path) : e.object;
    String place =
        file
            + (e.path.isEmpty() ? "" : ", " + e.path)
            + (e.line > 0 ? " (" + FileWords.say("line", Integer.toString(e.line)) + ")" : "");
    return new Defect(object, e.value, e.limit, place, object + ": " + e.what + " [" + place + "]");
  }

  private String objectAt(String path) {
    String at = path;
    while (!objects.containsKey(at) && !at.isEmpty()) {
      at = parent(at);
    }
    return objects.getOrDefault(at, path.isEmpty() ? FileWords.say("file") : path);
  }

  private int line(String path) {
    String at = path;
    while (!at.isEmpty()) {
      Integer line = lines.get(at);
      if (line != null) {
        return line;
      }
      at = parent(at);
    }
    return lines.getOrDefault("", 0);
  }

  private static String parent(String path) {
    int cut = Math.max(path.lastIndexOf('.'), path.lastIndexOf('['));
    return cut <= 0 ? "" : path.substring(0, cut);
  }

  static String child(String path, String name) {
    String shown = JsonValue.shorten(name);
    return path.isEmpty() ? shown : path + "." + shown;
  }

  static String child(String path, int index) {
    return path + "[" + index + "]";
  }
}
