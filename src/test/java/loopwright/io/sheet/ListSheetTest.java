package loopwright.io.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import loopwright.casework.Phrases;
import loopwright.casework.list.Allowance;
import loopwright.casework.list.ListTable;
import loopwright.casework.list.ListTables;
import loopwright.casework.list.MakingList;
import loopwright.evidence.Bench;
import loopwright.model.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ListSheetTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  /** Read by a strict reader of RFC 4180 that is not ours. */
  private static List<List<String>> read(String csv) throws IOException {
    try (MappingIterator<String[]> lines =
        CsvMapper.builder()
            .enable(CsvParser.Feature.WRAP_AS_ARRAY)
            .build()
            .readerFor(String[].class)
            .readValues(csv)) {
      List<List<String>> rows = new ArrayList<>();
      while (lines.hasNext()) {
        rows.add(List.of(lines.next()));
      }
      return rows;
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"pumper", "tractor", "truck", "motorcycle"})
  void readBackTheListsAreTheSame(String name) throws IOException {
    Vehicle vehicle = Bench.vehicle(name);
    ListTables tables = new ListTables(MakingList.of(vehicle, Allowance.USUAL, PHRASES), PHRASES);
    for (ListTable table :
        List.of(
            tables.buying(),
            tables.cutting(),
            tables.looms(),
            ListTables.labels(vehicle, PHRASES))) {
      List<List<String>> rows = read(ListSheet.text(table));
      assertThat(rows.get(0))
          .isEqualTo(table.columns().stream().map(ListTable.Column::heading).toList())
          .doesNotHaveDuplicates();
      assertThat(rows.subList(1, rows.size())).isEqualTo(table.rows());
    }
  }

  @Test
  void aCellIsNeverAFormula() throws IOException {
    List<String> cells =
        List.of("=1+1", "+A1", "-2", "@x", "\tx", "a=b", "", "+", "say \"two\", please\nthen");
    ListTable table =
        new ListTable(
            "t",
            List.of(),
            cells.stream().map(c -> new ListTable.Column("c", 1, ListTable.Side.LEFT)).toList(),
            List.of(cells));
    assertThat(read(ListSheet.text(table)).get(1))
        .containsExactly(
            "'=1+1", "'+A1", "'-2", "'@x", "'\tx", "a=b", "", "+", "say \"two\", please\nthen");
  }
}
