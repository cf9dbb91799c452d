package org.benchtrail.seal;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.postgresql.util.PGobject;

/**
 * One byte of one row changed, as whoever owns the database would do it, and put back.
 *
 * @param before all columns as text
 * @param after the changed column as text
 * @param ctid where the row stands since
 */
record ChangedByte(String table, String column, String type, Map<String, String> before, String after, String ctid) {
    private static final int TRIES = 40;

    /** The columns that hold what was put in, with their types. */
    static Map<String, String> columns(Connection owner, String table) throws SQLException {
        Map<String, String> columns = new LinkedHashMap<>();
        try (PreparedStatement asked = owner.prepareStatement(
                "select a.attname, t.typname from pg_attribute a join pg_type t on t.oid = a.atttypid where a.attrelid ="
                        + " to_regclass(?) and a.attnum > 0 and not a.attisdropped and a.attgenerated = '' order by 1")) {
            asked.setString(1, table);
            try (ResultSet rows = asked.executeQuery()) {
                while (rows.next()) {
                    columns.put(rows.getString(1), rows.getString(2));
                }
            }
        }
        return columns;
    }

    /** Null where the value has no byte that can be changed, or what the database itself refuses to hold. */
    static ChangedByte make(
            Connection owner,
            String table,
            String ctid,
            String column,
            Map<String, String> types,
            SplittableRandom random)
            throws SQLException {
        Map<String, String> before = row(owner, table, types, ctid);
        String value = before.get(column);
        if (value == null) {
            return null;
        }
        String type = types.get(column);
        for (int i = 0; i < TRIES; i++) {
            String other = changed(value, type, random);
            if (other != null && !other.equals(value)) {
                String now = set(owner, table, column, type, other, ctid);
                if (now != null) {
                    return new ChangedByte(table, column, type, before, other, now);
                }
            }
        }
        return null;
    }

    /** The same, taken back. */
    ChangedByte takenBack(Connection owner) throws SQLException {
        return holding(owner, before.get(column));
    }

    /** The same, made again after it was taken back. */
    ChangedByte again(Connection owner) throws SQLException {
        return holding(owner, after);
    }

    private ChangedByte holding(Connection owner, String value) throws SQLException {
        String now = set(owner, table, column, type, value, ctid);
        if (now == null) {
            throw new IllegalStateException("the row is not where it was: " + this);
        }
        return new ChangedByte(table, column, type, before, after, now);
    }

    private static Map<String, String> row(Connection owner, String table, Map<String, String> types, String ctid)
            throws SQLException {
        List<String> asked = new ArrayList<>();
        types.forEach(
                (name, type) -> asked.add(type.equals("bytea") ? "encode(" + name + ", 'hex')" : name + "::text"));
        try (PreparedStatement statement = owner.prepareStatement(
                "select " + String.join(", ", asked) + " from " + table + " where ctid = ?::tid")) {
            statement.setString(1, ctid);
            try (ResultSet found = statement.executeQuery()) {
                found.next();
                Map<String, String> row = new LinkedHashMap<>();
                int i = 1;
                for (String name : types.keySet()) {
                    row.put(name, found.getString(i++));
                }
                return row;
            }
        }
    }

    private static String set(Connection owner, String table, String column, String type, String value, String ctid)
            throws SQLException {
        String cast = type.equals("bytea") ? "decode(?, 'hex')" : "cast(? as " + type + ")";
        try (PreparedStatement statement = owner.prepareStatement(
                "update " + table + " set " + column + " = " + cast + " where ctid = ?::tid returning ctid::text")) {
            if (type.equals("jsonb")) {
                PGobject json = new PGobject();
                json.setType("jsonb");
                json.setValue(value);
                statement.setObject(1, json);
            } else {
                statement.setString(1, value);
            }
            statement.setString(2, ctid);
            try (ResultSet now = statement.executeQuery()) {
                return now.next() ? now.getString(1) : null;
            }
        } catch (SQLException refused) {
            if (refused.getSQLState().startsWith("23") || refused.getSQLState().startsWith("22")) {
                return null;
            }
            throw refused;
        }
    }

    private static String changed(String value, String type, SplittableRandom random) {
        return switch (type) {
            case "bytea" -> hex(value, random);
            case "bool" -> value.equals("true") || value.equals("t") ? "false" : "true";
            case "int2" -> "" + (Long.parseLong(value) ^ 1L << random.nextInt(15));
            case "int4" -> "" + (Long.parseLong(value) ^ 1L << random.nextInt(31));
            case "int8" -> "" + (Long.parseLong(value) ^ 1L << random.nextInt(62));
            case "timestamptz" -> moment(value, random);
            default -> letter(value, type, random);
        };
    }

    private static String hex(String value, SplittableRandom random) {
        if (value.isEmpty()) {
            return null;
        }
        int at = 2 * random.nextInt(value.length() / 2);
        int other = Integer.parseInt(value.substring(at, at + 2), 16) ^ (1 + random.nextInt(255));
        return value.substring(0, at) + String.format("%02x", other) + value.substring(at + 2);
    }

    /** A digit of the time, from microseconds to years. */
    private static String moment(String value, SplittableRandom random) {
        return letter(value, "digits", random);
    }

    private static String letter(String value, String type, SplittableRandom random) {
        byte[] bytes = value.getBytes(StandardCharsets.UTF_8);
        boolean digits = type.equals("digits") || type.equals("numeric");
        if (bytes.length == 0) {
            return null;
        }
        int at = random.nextInt(bytes.length);
        if (bytes[at] < 0 || (digits && !Character.isDigit(bytes[at]))) {
            return null;
        }
        boolean array = type.startsWith("_");
        String ofArrays = "{},\"\\ ";
        boolean structure = array && ofArrays.indexOf(bytes[at]) >= 0;
        bytes[at] = (byte) (digits ? '0' + random.nextInt(10) : ' ' + random.nextInt(95));
        return structure || (array && ofArrays.indexOf(bytes[at]) >= 0)
                ? null
                : new String(bytes, StandardCharsets.UTF_8);
    }

    @Override
    public String toString() {
        return table + "." + column + ": " + before + " -> " + after;
    }
}
