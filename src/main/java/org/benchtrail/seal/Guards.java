package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.benchtrail.platform.nodes.Nodes;
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

    private final EntityManager database;
    private final Nodes nodes;
    private final String standing;
    private final Map<String, String> made = made();

    Guards(EntityManager database, Nodes nodes) {
        this.database = database;
        this.nodes = nodes;
        standing = SqlText.of(Guards.class).statement("standing");
    }

    private record Standing(String kind, String name, String detail) {}

    /** What stands in the database, by kind and name; within the running transaction. */
    Map<String, String> standing() {
        return Sql.of(database, standing).rows(Standing.class).stream()
                .collect(Collectors.toMap(
                        one -> one.kind() + " " + one.name(),
                        Standing::detail,
                        (one, other) -> one + " | " + other,
                        TreeMap::new));
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

    /** What is not what the migrations made. */
    List<Finding> unlike() {
        Map<String, String> now = standing();
        TreeSet<String> names = new TreeSet<>(made.keySet());
        names.addAll(now.keySet());
        List<Finding> found = new ArrayList<>();
        for (String name : names) {
            String fault = fault(made.get(name), now.get(name));
            if (!fault.isEmpty()) {
                found.add(new Finding("guard", name, fault));
            }
        }
        return found.isEmpty() || !nodes.isLaterSeen()
                ? found
                : List.of(new Finding(
                        "guard",
                        "schema",
                        "Of " + found.size()
                                + " guards this release cannot tell whether they are as a later one made them,"
                                + " which has run on this database: let a server of that release look."));
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
