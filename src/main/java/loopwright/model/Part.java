package loopwright.model;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Anything replaceable.
 *
 * @param id short name, unique in the vehicle, without dots or spaces, for instance {@code F3}
 * @param name what a person calls it, for instance "beacon fuse"
 * @param label what is written on it on the vehicle; may be empty
 * @param spec kind and values
 * @param access what it takes to reach each terminal; terminals not named are at hand
 * @param apartMinutes working time to unplug, pull or take it out; empty where it can't be
 * @param swapMinutes working time to replace it with a good one; empty where none is at hand
 * @param spare terminals that are meant to stay free
 * @param where in words, where it sits; may be empty
 * @param note anything worth knowing; may be empty
 * @param photos photos of it and of its terminals
 */
public record Part(
    String id,
    String name,
    String label,
    PartSpec spec,
    Map<String, Access> access,
    Optional<Double> apartMinutes,
    Optional<Double> swapMinutes,
    java.util.Set<String> spare,
    String where,
    String note,
    List<Photo> photos) {

  /** Copies the collections. */
  public Part {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(spec, "spec");
    Objects.requireNonNull(where, "where");
    access = Map.copyOf(access);
    spare = java.util.Set.copyOf(spare);
    Objects.requireNonNull(note, "note");
    photos = List.copyOf(photos);
  }

  /** A part without note and photos. */
  public Part(
      String id,
      String name,
      String label,
      PartSpec spec,
      Map<String, Access> access,
      Optional<Double> apartMinutes,
      Optional<Double> swapMinutes,
      java.util.Set<String> spare,
      String where) {
    this(id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, "", List.of());
  }

  /** A part with no label, access or times stated. */
  public static Part of(String id, String name, PartSpec spec) {
    return new Part(
        id, name, "", spec, Map.of(), Optional.empty(), Optional.empty(), java.util.Set.of(), "");
  }

  /** This part under another id. */
  public Part withId(String id) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** This part with another name. */
  public Part withName(String name) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** This part with something else written on it. */
  public Part withLabel(String label) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** This part with other values or of another kind. */
  public Part withSpec(PartSpec spec) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** This part with other ways to reach its terminals. */
  public Part withAccess(Map<String, Access> access) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** This part with other terminals meant to stay free. */
  public Part withSpare(java.util.Set<String> spare) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** This part in another place. */
  public Part withWhere(String where) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** This part with other working times to take it out and to replace it, in minutes. */
  public Part withMinutes(Optional<Double> apart, Optional<Double> swap) {
    return new Part(id, name, label, spec, access, apart, swap, spare, where, note, photos);
  }

  /** This part with another note. */
  public Part withNote(String note) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** This part with other photos. */
  public Part withPhotos(List<Photo> photos) {
    return new Part(
        id, name, label, spec, access, apartMinutes, swapMinutes, spare, where, note, photos);
  }

  /** The kind of part. */
  public PartKind kind() {
    return spec.kind();
  }

  /** What it takes to reach a terminal. */
  public Access access(String terminal) {
    return access.getOrDefault(terminal, Access.OPEN);
  }

  /** Name with id, as screens show it: {@code beacon fuse F3}. */
  public String title() {
    return name.isEmpty() ? id : name + " " + id;
  }
}
