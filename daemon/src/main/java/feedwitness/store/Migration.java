package feedwitness.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;

/**
 * One step forward of the layout. H2 commits with every definition, so a step may be cut short and
 * is then run again: each statement must bear that ({@code if not exists}), and the filling too.
 *
 * @param toVersion version after the step, from 1, without gaps
 * @param filling what statements cannot do, after them
 */
record Migration(int toVersion, List<String> statements, Filling filling) {
  Migration {
    statements = List.copyOf(statements);
  }

  /** Statements only. */
  Migration(int toVersion, List<String> statements) {
    this(toVersion, statements, connection -> {});
  }

  /** Fills new tables from old ones. */
  interface Filling {
    void run(Connection connection) throws SQLException;
  }

  /**
   * All steps of this program, in order. The reasons are in docs/decisions/0001-store-layout.md.
   */
  static List<Migration> all() {
    return List.of(
        new Migration(
            1,
            List.of(
                // one row a start of the service
                "create table if not exists boot("
                    + "boot int primary key, started_millis bigint not null)",
                // last_chunk: the chunk that is last in (boot, sequence) order
                "create table if not exists point("
                    + "id int primary key, name varchar(32) not null unique, last_chunk bigint)",
                "create table if not exists basis(id int primary key, text varchar not null)",
                // one row a forced sync, all points together
                "create table if not exists hot("
                    + "n bigint primary key, packed varbinary not null)",
                // k: see ChunkKey
                "create table if not exists chunk("
                    + "k bigint primary key, boot int not null, "
                    + "first_seq bigint not null, last_seq bigint not null, "
                    + "first_millis bigint not null, last_millis bigint not null, "
                    + "samples int not null, readings int not null, "
                    + "min25 double precision, max25 double precision, "
                    + "bases varchar not null, packed varbinary not null)",
                // small rows in key order: also the directory of the chunks
                "create table if not exists rollup_hour("
                    + "k bigint primary key, boot int not null, first_seq bigint not null, "
                    + "samples int not null, whole varbinary not null, "
                    + "quarters varbinary not null)",
                "create table if not exists rollup_minute("
                    + "k bigint primary key, packed varbinary not null)",
                // what could not be read again, kept for salvage
                "create table if not exists damaged("
                    + "id bigint generated always as identity primary key, "
                    + "found_millis bigint not null, what varchar not null, "
                    + "packed varbinary not null)")),
        new Migration(
            2,
            List.of(
                // what dates the samples a boot took before its clock was trusted
                "create table if not exists dating("
                    + "boot int primary key, offset_millis bigint not null, "
                    + "found_millis bigint not null)",
                // chunks whose hour is only what an untrusted clock said
                "create table if not exists undated_chunk("
                    + "k bigint primary key, boot int not null, "
                    + "first_mono bigint not null, last_mono bigint not null, "
                    + "first_wall bigint not null)",
                // samples that came while there was no room to keep them
                "create table if not exists not_recorded("
                    + "id bigint generated always as identity primary key, "
                    + "boot int not null, first_seq bigint not null, last_seq bigint not null, "
                    + "samples bigint not null, why varchar not null)")),
        new Migration(
            3,
            List.of(
                // apart from the hours: a year is read from half as many pages without them
                "create table if not exists rollup_quarter("
                    + "k bigint primary key, packed varbinary not null)",
                "merge into rollup_quarter(k, packed) "
                    + "select k, quarters from rollup_hour where quarters is not null",
                "alter table rollup_hour alter column quarters drop not null",
                "update rollup_hour set quarters = null where quarters is not null",
                // names again, each in an envelope, for a file that cannot be opened any more
                "create table if not exists copy("
                    + "k bigint primary key, packed varbinary not null)")),
        new Migration(
            4,
            List.of(
                // the hours of a day in one row: see DayRows
                "create table if not exists rollup_day("
                    + "k bigint primary key, packed varbinary not null)"),
            DayRows::fill),
        new Migration(
            5,
            List.of(
                // what happened besides measuring; kind, subject and time are there to search by,
                // the record itself is in the envelope; no time: dated by its boot, if ever
                "create table if not exists evidence("
                    + "id bigint primary key, kind varchar(32) not null, "
                    + "subject varchar(64) not null, boot int not null, wall_millis bigint, "
                    + "packed varbinary not null)",
                "create index if not exists evidence_kind on evidence(kind, id)",
                "create index if not exists evidence_subject on evidence(subject, id)",
                "create table if not exists evidence_picture("
                    + "id bigint primary key, packed varbinary not null)",
                // what watchers know; may be learnt anew
                "create table if not exists state("
                    + "name varchar(64) primary key, text varchar not null, "
                    + "kept_millis bigint not null)")),
        // readings may have a contact: nothing moves, but a program that does not know it would
        // take them for damaged
        new Migration(6, List.of()));
  }
}
