package org.benchtrail.figures;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.figures.TicketTimes;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Standing;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.site.TeamBook;
import org.jspecify.annotations.Nullable;

/** The rows that figures are made of; everything within the running transaction. */
@Startup
@ApplicationScoped
class FigureRows {
    private final EntityManager database;
    private final SqlText text;

    FigureRows(EntityManager database) {
        this.database = database;
        text = SqlText.of(FigureRows.class)
                .having(
                        "opened",
                        "closed",
                        "of the category",
                        "at the place",
                        "of the team",
                        "of the cause",
                        "causes",
                        "titles");
    }

    /**
     * A ticket.
     *
     * @param assignee account of who has it, or had it last; only to find the team, and told nowhere
     * @param cause key of the cause that it was closed with; null while there is none of the catalogue
     * @param moves as {@link MovesText} reads them, and {@code holds} too
     */
    record Ticket(
            int serial,
            Category category,
            String place,
            Instant opened,
            Instant due,
            @Nullable Instant ended,
            Standing standing,
            @Nullable String assignee,
            @Nullable String cause,
            @Nullable String moves,
            @Nullable String holds) {
        TicketTimes times() {
            return MovesText.read(opened, moves, holds);
        }
    }

    /** A closing; a ticket that was closed twice has two. */
    record Closing(
            int serial,
            Instant closed,
            Instant opened,
            @Nullable String moves,
            @Nullable String holds) {
        TicketTimes times() {
            return MovesText.read(opened, moves, holds);
        }
    }

    record Titled(int serial, String title) {}

    /** What was opened in the period, the latest first, at most so many. */
    List<Ticket> opened(FigurePeriod period, int most) {
        return of("opened", period, most).rows(Ticket.class);
    }

    /** What was closed in the period, the latest first, at most so many. */
    List<Closing> closed(FigurePeriod period, int most) {
        return of("closed", period, most).rows(Closing.class);
    }

    private Sql of(String statement, FigurePeriod period, int most) {
        List<String> conditions = new ArrayList<>();
        Category category = period.category();
        if (category != null) {
            conditions.add("of the category");
        }
        if (!period.place().isEmpty()) {
            conditions.add("at the place");
        }
        TeamBook.Members team = period.team();
        if (team != null) {
            conditions.add("of the team");
        }
        FigureCause cause = period.cause();
        if (cause != null) {
            conditions.add("of the cause");
        }
        Sql asked = Sql.of(database, text.statement(statement, conditions))
                .with("begins", period.begins())
                .with("ends", period.ends())
                .with("most", most);
        if (category != null) {
            asked.with("category", category.name());
        }
        if (!period.place().isEmpty()) {
            asked.with("place", period.place().toLowerCase(Locale.ROOT));
        }
        if (team != null) {
            asked.with("members", team.members());
        }
        if (cause != null) {
            asked.with("causeCategory", cause.category().name()).with("causeIds", cause.ids());
        }
        return asked;
    }

    /** Keys of the causes of the catalogue that tickets were closed with in the period. */
    List<String> causes(FigurePeriod period) {
        return Sql.of(database, text.statement("causes"))
                .with("begins", period.begins())
                .with("ends", period.ends())
                .values(String.class);
    }

    List<Titled> titles(Collection<Integer> serials) {
        return serials.isEmpty()
                ? List.of()
                : Sql.of(database, text.statement("titles"))
                        .with("serials", serials)
                        .rows(Titled.class);
    }
}
