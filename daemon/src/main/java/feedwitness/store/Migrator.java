package feedwitness.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.tinylog.Logger;

/** Brings the layout of a file forward, step by step, after a backup. Never backward. */
final class Migrator {
  private final List<Migration> steps;

  Migrator(List<Migration> steps) {
    this.steps = List.copyOf(steps);
  }

  /** Version this program writes. */
  int newest() {
    return steps.get(steps.size() - 1).toVersion();
  }

  /** Version of the file; 0 if it is new. */
  int version(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      try (ResultSet table =
          statement.executeQuery(
              "select 1 from information_schema.tables where table_name = 'SCHEMA_VERSION'")) {
        if (!table.next()) {
          return 0;
        }
      }
      try (ResultSet row = statement.executeQuery("select max(version) from schema_version")) {
        return row.next() ? row.getInt(1) : 0;
      }
    }
  }

  /** Runs the steps that are missing. The backup stays beside the file. */
  void forward(Connection connection, Path directory) throws SQLException {
    int version = version(connection);
    try (Statement statement = connection.createStatement()) {
      if (version > 0 && version < newest()) {
        backup(statement, directory, version);
      }
      statement.execute("create table if not exists schema_version(version int primary key)");
      for (Migration step : steps) {
        if (step.toVersion() > version) {
          for (String sql : step.statements()) {
            statement.execute(sql);
          }
          step.filling().run(connection);
          note(connection, step.toVersion());
        }
      }
      connection.commit();
    }
  }

  private void backup(Statement statement, Path directory, int version) throws SQLException {
    Path backup = directory.resolve("%s-before-version-%d.zip".formatted(H2File.NAME, newest()));
    for (int i = 2; Files.exists(backup); i++) {
      backup = directory.resolve("%s-before-version-%d-%d.zip".formatted(H2File.NAME, newest(), i));
    }
    statement.execute("backup to '" + backup.toString().replace("'", "''") + "'");
    Logger.info(
        "history file goes from version {} to {}; what it was is kept in {}",
        version,
        newest(),
        backup);
  }

  private static void note(Connection connection, int version) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("merge into schema_version(version) values (?)")) {
      insert.setInt(1, version);
      insert.executeUpdate();
    }
  }
}
