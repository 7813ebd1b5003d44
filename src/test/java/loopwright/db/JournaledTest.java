package loopwright.db;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import loopwright.db.gen.DefaultSchema;
import org.jooq.Field;
import org.junit.jupiter.api.Test;

class JournaledTest {

  private static List<String> generated() {
    return DefaultSchema.DEFAULT_SCHEMA.getTables().stream()
        .map(table -> table.getName().toLowerCase(Locale.ROOT))
        .toList();
  }

  @Test
  void everyTableIsEitherJournaledOrNamedAsNot() {
    assertThat(Journaled.NAMES).doesNotHaveDuplicates();
    assertThat(Journaled.NAMES).doesNotContainAnyElementsOf(Journaled.NOT_JOURNALED);
    assertThat(generated())
        .hasSize(Journaled.NAMES.size() + Journaled.NOT_JOURNALED.size())
        .allMatch(name -> Journaled.is(name) || Journaled.NOT_JOURNALED.contains(name));
  }

  @Test
  void insertOnlyTablesAreTables() {
    assertThat(generated()).containsAll(AppAccount.INSERT_ONLY);
  }

  @Test
  void aRowIsNamedByOneNumberAndAGroupByItsParents() {
    for (Journaled table : Journaled.all()) {
      List<Field<?>> key = table.order();
      assertThat(key.get(0).getType()).as(table.name()).isEqualTo(Long.class);
      assertThat(key).as(table.name()).hasSize(table.grouped() ? 2 : 1);
    }
  }

  @Test
  void groupsAreInsertOnly() {
    assertThat(Journaled.all()).filteredOn(Journaled::grouped).allMatch(Journaled::insertOnly);
  }
}
