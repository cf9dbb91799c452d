package org.benchtrail.figures;

import java.util.List;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.platform.sql.SqlText;

/** Tables of tickets and trails in a schema of their own, {@code many_moves}, for whoever fills them with many invented ones. */
public final class FigureTables {
    private static final SqlText TEXT = SqlText.of(FigureBenchmark.class);

    private FigureTables() {}

    public static void make() {
        List.of("none", "schema").forEach(part -> TestDatabase.run(TEXT.statement(part)));
    }

    /** Once they are filled. */
    public static void index() {
        List.of("indexes", "rights", "seen", "counted").forEach(part -> TestDatabase.run(TEXT.statement(part)));
    }

    public static void drop() {
        TestDatabase.run(TEXT.statement("none"));
    }
}
