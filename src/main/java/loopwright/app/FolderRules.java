package loopwright.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.casework.RulesElsewhere;
import loopwright.diagnosis.rulebook.RuleBook;
import loopwright.model.Language;
import loopwright.rules.DroolsRuleBook;
import loopwright.rules.RuleBookException;
import loopwright.rules.RuleFiles;

/**
 * Rules in a folder of the owner's. They are read once: what was shown and fingerprinted is what is
 * run, whatever becomes of the folder meanwhile.
 */
final class FolderRules implements RulesElsewhere {
  private static final Pattern TITLE = Pattern.compile("(?m)^//\\s*title:\\s*(.*)$");

  private final Path folder;
  private final RuleFiles files;
  private final Path allowed;
  private final Consumer<RuleBook> use;

  /**
   * Reads a folder.
   *
   * @param data where it is remembered what was allowed
   * @param use takes the rules, compiled
   * @throws Problem if it can't be read
   */
  FolderRules(Path folder, Path data, Consumer<RuleBook> use) throws Problem {
    this.folder = folder;
    this.allowed = data.resolve("allowed-rules.txt");
    this.use = use;
    try {
      files = RuleFiles.inFolder(folder);
    } catch (UncheckedIOException e) {
      throw new Problem("--rules", folder.toString(), say("unread"));
    }
    if (files.texts().isEmpty()) {
      throw new Problem("--rules", folder.toString(), say("empty"));
    }
  }

  private static String say(String key, Object... args) {
    return Phrases.inUse().say("rules.elsewhere." + key, args);
  }

  /** All texts of a rule's folder in one, by that folder. */
  private static SortedMap<String, String> folders(RuleFiles files) {
    SortedMap<String, String> folders = new TreeMap<>();
    files
        .texts()
        .forEach(
            (path, text) -> {
              int slash = path.lastIndexOf('/');
              folders.merge(
                  slash < 0 ? path : path.substring(0, slash),
                  path + "\n" + text + "\n",
                  String::concat);
            });
    return folders;
  }

  @Override
  public List<Rule> rules() {
    SortedMap<String, String> own = folders(RuleFiles.bundled());
    SortedMap<String, String> here = folders(files);
    List<Rule> rules = new ArrayList<>();
    for (Map.Entry<String, String> rule : here.entrySet()) {
      String before = own.remove(rule.getKey());
      Own standing =
          before == null ? Own.NEW : before.equals(rule.getValue()) ? Own.SAME : Own.CHANGED;
      rules.add(new Rule(rule.getKey(), title(rule.getValue()), standing));
    }
    own.forEach((path, texts) -> rules.add(new Rule(path, title(texts), Own.MISSING)));
    return rules;
  }

  private static String title(String texts) {
    Matcher title = TITLE.matcher(texts);
    return title.find() ? title.group(1).strip() : say("untitled");
  }

  @Override
  public String fingerprint() {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      files
          .texts()
          .forEach(
              (path, text) -> {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                // With their lengths, so that no text can pass for the next one's name.
                String head = path.length() + " " + bytes.length + " " + path;
                digest.update(head.getBytes(StandardCharsets.UTF_8));
                digest.update(bytes);
              });
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  @Override
  public boolean allowedBefore() {
    try {
      String print = fingerprint();
      return Files.exists(allowed)
          && Files.readAllLines(allowed).stream().anyMatch(l -> l.startsWith(print + " "));
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  public void take() throws Problem {
    try {
      use.accept(new DroolsRuleBook(files, Language.inUse().locale()));
    } catch (RuleBookException e) {
      throw new Problem("--rules", folder.toString(), say("defective", e.getMessage()));
    }
    if (allowedBefore()) {
      return;
    }
    try {
      Files.createDirectories(allowed.getParent());
      Files.writeString(
          allowed,
          fingerprint() + " " + folder.toAbsolutePath() + "\n",
          StandardOpenOption.CREATE,
          StandardOpenOption.APPEND);
    } catch (IOException e) {
      // They run this time; the next time it is asked again.
    }
  }
}
