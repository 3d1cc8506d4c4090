package loopwright.io;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import loopwright.model.Vehicle;

/**
 * Vehicle files: JSON, format {@code loopwright-vehicle}, version 1, described by {@code
 * schema/vehicle-1.schema.json}. A file is read as pure data.
 *
 * <p>Limits: 20 MB, 50 levels of nesting, 10,000 characters a text, 20,000 parts, 1,000,000 values.
 */
public final class VehicleFile {
  /** What the field {@code format} says. */
  public static final String FORMAT = "loopwright-vehicle";

  /** What the field {@code version} says. */
  public static final int VERSION = 1;

  /** Version 1 is the first there is, so nothing leads up to it yet. */
  private static final VersionSteps STEPS = new VersionSteps(FORMAT, VERSION, Map.of());

  private VehicleFile() {}

  /**
   * Reads a vehicle and checks it as a whole. A file that cannot be opened is a defect like any
   * other.
   */
  public static ReadResult<Vehicle> read(Path path) {
    DefectList defects = new DefectList(String.valueOf(path.getFileName()));
    return finish(JsonTree.bytes(path, defects), defects);
  }

  /**
   * Reads a vehicle from a stream, which is not closed.
   *
   * @param placeName what defects call the file
   */
  public static ReadResult<Vehicle> read(InputStream in, String placeName) {
    DefectList defects = new DefectList(placeName);
    return finish(JsonTree.bytes(in, defects), defects);
  }

  /**
   * Reads a vehicle from a text.
   *
   * @param placeName what defects call the file
   */
  public static ReadResult<Vehicle> read(String json, String placeName) {
    DefectList defects = new DefectList(placeName);
    byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
    return finish(JsonTree.bytes(new ByteArrayInputStream(bytes), defects), defects);
  }

  /**
   * Reads a vehicle that may not hold together yet, as one that is being worked on: only what can't
   * be read at all is a defect.
   *
   * @param placeName what defects call the file
   */
  static ReadResult<Vehicle> readDraft(byte[] json, String placeName) {
    DefectList defects = new DefectList(placeName);
    Optional<byte[]> bytes = JsonTree.bytes(new ByteArrayInputStream(json), defects);
    return finish(bytes, defects, VehicleReader::readDraft);
  }

  /**
   * Reads a vehicle that may not hold together yet.
   *
   * @see #readDraft(byte[], String)
   */
  public static ReadResult<Vehicle> readDraft(Path path) {
    DefectList defects = new DefectList(String.valueOf(path.getFileName()));
    return finish(JsonTree.bytes(path, defects), defects, VehicleReader::readDraft);
  }

  /** The text of a vehicle's file: stable order, one line for each part, join and circuit. */
  public static String text(Vehicle vehicle) {
    return VehicleWriter.text(vehicle);
  }

  /**
   * Writes a vehicle so that the path holds either what it held before or the whole new file.
   *
   * @throws IOException naming the vehicle, the path and the reason; the old file is then untouched
   */
  public static void write(Vehicle vehicle, Path path) throws IOException {
    SafeFile.write(
        path,
        FileWords.say("vehicle.of", vehicle.id()),
        text(vehicle).getBytes(StandardCharsets.UTF_8));
  }

  private static ReadResult<Vehicle> finish(Optional<byte[]> bytes, DefectList defects) {
    return finish(bytes, defects, VehicleReader::read);
  }

  private static ReadResult<Vehicle> finish(
      Optional<byte[]> bytes,
      DefectList defects,
      BiFunction<JsonValue, DefectList, Optional<Vehicle>> reader) {
    Optional<Vehicle> vehicle =
        bytes
            .flatMap(b -> JsonTree.parse(b, defects))
            .flatMap(root -> STEPS.upToDate(root, defects))
            .flatMap(root -> reader.apply(root, defects));
    if (vehicle.isPresent() && defects.isEmpty()) {
      return new ReadResult.Good<>(vehicle.get());
    }
    return new ReadResult.Refused<>(defects.all());
  }
}
