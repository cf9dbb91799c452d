package org.benchtrail.platform.sql;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The statements of one class, read from the resource {@code <class>.sql} beside it. A line {@code -- @ name} begins a statement; lines
 * before the first are about the file. Where a statement holds {@code {and}}, conditions that are asked for only at times are put in,
 * which are named and written in the same way; {@code {put name}} is a part that several statements share.
 *
 * <p>A class asks for its statements while it is made, and is made at the start of the server ({@code @Startup}), so that a
 * missing one is told then and not to the first who needs it.
 */
public final class SqlText {
    private static final String BEGINS = "-- @ ";
    private static final String CONDITIONS = "{and}";
    private static final Pattern PUT = Pattern.compile("\\{put ([^}]+)}");

    private final String resource;
    private final Map<String, String> statements;

    private SqlText(String resource, Map<String, String> statements) {
        this.resource = resource;
        this.statements = statements;
    }

    /** @throws IllegalStateException if there is no such resource, or it names a statement twice */
    public static SqlText of(Class<?> reader) {
        String resource = reader.getSimpleName() + ".sql";
        try (InputStream found = reader.getResourceAsStream(resource)) {
            if (found == null) {
                throw new IllegalStateException("no resource " + resource + " beside " + reader.getName());
            }
            return new SqlText(resource, split(resource, new String(found.readAllBytes(), StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new UncheckedIOException(resource, e);
        }
    }

    private static Map<String, String> split(String resource, String text) {
        Map<String, StringBuilder> parts = new HashMap<>();
        StringBuilder part = new StringBuilder();
        for (String line : text.lines().toList()) {
            if (line.startsWith(BEGINS)) {
                part = new StringBuilder();
                String name = line.substring(BEGINS.length()).strip();
                if (parts.put(name, part) != null) {
                    throw new IllegalStateException(resource + " names '" + name + "' twice");
                }
            } else if (!line.startsWith("--")) {
                part.append(line).append('\n');
            }
        }
        Map<String, String> statements = new HashMap<>();
        parts.forEach((name, words) -> statements.put(name, words.toString().strip()));
        statements.replaceAll((name, words) -> PUT.matcher(words)
                .replaceAll(put -> Matcher.quoteReplacement(shared(resource, statements, put.group(1)))));
        return statements;
    }

    private static String shared(String resource, Map<String, String> statements, String name) {
        String part = statements.get(name);
        if (part == null || PUT.matcher(part).find()) {
            throw new IllegalStateException(resource + " puts in '" + name + "', which is no plain part of it");
        }
        return part;
    }

    /** Itself, if it has all of these: for a class that puts its statements together only when they are sent. */
    public SqlText having(String... names) {
        Stream.of(names).forEach(this::statement);
        return this;
    }

    /** @throws IllegalStateException if there is none of that name */
    public String statement(String name) {
        String statement = statements.get(name);
        if (statement == null) {
            throw new IllegalStateException(resource + " has no statement '" + name + "'");
        }
        return statement.replace(CONDITIONS, "");
    }

    /** A statement with these of its conditions; each has to be true besides what the statement asks anyway. */
    public String statement(String name, List<String> conditions) {
        String statement = statements.get(name);
        if (statement == null || !statement.contains(CONDITIONS)) {
            throw new IllegalStateException(resource + ": '" + name + "' is no statement with a place for conditions");
        }
        StringBuilder joined = new StringBuilder();
        conditions.forEach(c -> joined.append("and (").append(statement(c)).append(")\n"));
        return statement.replace(CONDITIONS, joined.toString().strip());
    }
}
