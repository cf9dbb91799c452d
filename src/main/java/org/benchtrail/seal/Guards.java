package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.seal.VerificationRows.Finding;
import org.jspecify.annotations.Nullable;

/**
 * What in the database itself guards the record: functions and their bodies, triggers, rights, row policies. What the migrations made
 * is listed beside this class, as a part of the program, where whoever owns the database cannot change it together with the guard.
 */
@Startup
@ApplicationScoped
class Guards {
    static final String LIST = "guards.tsv";

    /** Beside the guards: which migration ran last. */
    private static final String NEWEST = "migration newest";

    private static final int NAMED = 5;

    private final EntityManager database;
    private final SqlText text;
    private final Map<String, String> made = made();

    Guards(EntityManager database) {
        this.database = database;
        text = SqlText.of(Guards.class).having("standing", "may read migrations", "newest migration");
    }

    private record Standing(String kind, String name, String detail) {}

    /** What stands in the database, by kind and name; within the running transaction. */
    Map<String, String> standing() {
        Map<String, String> standing = of("standing").rows(Standing.class).stream()
                .collect(Collectors.toMap(
                        one -> one.kind() + " " + one.name(),
                        Standing::detail,
                        (one, other) -> one + " | " + other,
                        TreeMap::new));
        standing.put(
                NEWEST,
                of("may read migrations").value(Boolean.class)
                        ? of("newest migration").value(String.class)
                        : "0");
        return standing;
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    private static Map<String, String> made() {
        try (InputStream list = Guards.class.getResourceAsStream(LIST)) {
            return new String(Objects.requireNonNull(list, LIST).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(line -> line.split("\t", -1))
                    .collect(Collectors.toMap(parts -> parts[0], parts -> parts[1]));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * What is not what the migrations made. Where other migrations have run than those of this release it cannot tell, and says that in
     * one finding: whoever owns the database can write that more have run, and hides nothing by it.
     */
    List<Finding> unlike() {
        Map<String, String> now = standing();
        TreeSet<String> names = new TreeSet<>(made.keySet());
        names.addAll(now.keySet());
        names.remove(NEWEST);
        List<Finding> found = new ArrayList<>();
        for (String name : names) {
            String fault = fault(made.get(name), now.get(name));
            if (!fault.isEmpty()) {
                found.add(new Finding("guard", name, fault));
            }
        }
        String other = otherRelease(now);
        return found.isEmpty() || other.isEmpty()
                ? found
                : List.of(new Finding("guard", "schema", told(found) + other));
    }

    private static String told(List<Finding> found) {
        return "Of " + found.size() + (found.size() == 1 ? " guard" : " guards")
                + " this release cannot tell whether it is as the migrations made it ("
                + found.stream().limit(NAMED).map(Finding::place).collect(Collectors.joining(", "))
                + (found.size() > NAMED ? ", and others" : "") + "). ";
    }

    /** Empty if the migrations of this release have run and no others. */
    private String otherRelease(Map<String, String> now) {
        BigInteger ran = new BigInteger(Objects.requireNonNull(now.get(NEWEST)));
        BigInteger own = new BigInteger(Objects.requireNonNull(made.get(NEWEST)));
        return switch (ran.compareTo(own)) {
            case 1 -> "A later release has migrated this database: let a server of that release look.";
            case -1 -> "This database has not been migrated to this release: migrate it, and look again.";
            default -> "";
        };
    }

    private static String fault(@Nullable String made, @Nullable String now) {
        if (now == null) {
            return "This guard of the database is gone.";
        }
        if (made == null) {
            return "No migration made it: " + now;
        }
        return made.equals(now) ? "" : "It is not what the migrations made. Now: " + now + " Then: " + made;
    }
}
