package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.Sights;
import org.jspecify.annotations.Nullable;

/** What can be read of known causes. Each reading is one transaction. */
@ApplicationScoped
@Transactional
public class KnowledgeQueries {
    /** Newest cases of a known cause that are shown, and that its findings are counted in. */
    private static final int CASES = 50;

    /** Newest other cases of the kind that its findings are held against. */
    private static final int OTHERS = 2_000;

    private static final int FINDINGS = 8;

    private final CauseRows causes;
    private final CauseAuthors authors;
    private final Confirmations confirmations;
    private final CauseHistory changes;
    private final EntityManager database;
    private final FindingWords findingWords;
    private final Sights sights;
    private final SqlText sql = SqlText.of(KnowledgeQueries.class);

    KnowledgeQueries(
            CauseRows causes,
            CauseAuthors authors,
            Confirmations confirmations,
            CauseHistory changes,
            EntityManager database,
            FindingWords findingWords,
            Sights sights) {
        this.sights = sights;
        this.causes = causes;
        this.authors = authors;
        this.confirmations = confirmations;
        this.changes = changes;
        this.database = database;
        this.findingWords = findingWords;
    }

    /**
     * A known cause with all that is known of it.
     *
     * @param authors accounts of those who wrote its words, and so do not confirm it
     * @param confirmers accounts of those who found it true in the words that stand
     * @param history newest first
     * @param cases newest first, at most 50
     * @param findings that its cases have more often than other cases of the kind, the most telling first
     */
    public record WholeCause(
            CauseJson cause,
            List<String> authors,
            List<String> confirmers,
            List<HistoryEntry> history,
            List<SupportingCase> cases,
            List<ToldApart> findings) {
        /** Whether that person may find it true outside a ticket. */
        boolean awaits(Actor actor) {
            return !authors.contains(actor.account()) && !confirmers.contains(actor.account());
        }
    }

    /**
     * One entry of the history.
     *
     * @param ticket number of the ticket it came with
     */
    public record HistoryEntry(
            int version,
            Instant at,
            String who,
            CauseEvent what,
            String reason,
            @Nullable String ticket,
            List<Difference> differences) {}

    /** A part that reads otherwise since. */
    public record Difference(String part, String before, String after) {}

    public record SupportingCase(String number, String title, String device, Instant closed, String closedBy) {}

    /** A finding: how many of its cases have it, against how many of the others. */
    public record ToldApart(String finding, int having, int cases, int othersHaving, int others) {
        double lead() {
            return (double) having / cases - (others == 0 ? 0 : (double) othersHaving / others);
        }
    }

    public WholeCause cause(long id, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        KnownCause cause = causes.present(id);
        sights.pass(cause.category, actor);
        return new WholeCause(
                CauseJson.of(cause),
                authors.of(id),
                confirmations.confirmers(id),
                history(id),
                cases(id),
                toldApart(cause));
    }

    /** Known causes without any words looked for, the latest changed first; null stands for any, but for retired ones. */
    public List<CauseJson> browse(
            @Nullable Category category, @Nullable CauseState state, int page, int size, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        sights.pass(category, actor);
        return causes.latest(category, state, page, size).stream()
                .map(CauseJson::of)
                .toList();
    }

    /** How many cases there are, at most {@code most}. */
    public long cases(int most, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return statement("count cases").with("most", most).value(Long.class);
    }

    private Sql statement(String name) {
        return Sql.of(database, sql.statement(name));
    }

    private List<HistoryEntry> history(long id) {
        return changes.of(id).stream()
                .map(c -> new HistoryEntry(
                        c.version,
                        c.at,
                        c.who,
                        c.what,
                        c.reason,
                        c.ticket == null ? null : new TicketNumber(c.ticket).toString(),
                        c.before == null ? List.of() : differences(changes.read(c.before), changes.read(c.after))))
                .toList();
    }

    private static List<Difference> differences(CauseImage before, CauseImage after) {
        List<Difference> found = new ArrayList<>();
        differ(found, "name", before.title(), after.title());
        differ(
                found,
                "kind of trouble",
                before.category().title(),
                after.category().title());
        differ(found, "cause of the catalogue", text(before.causeId()), text(after.causeId()));
        differ(found, "how it shows", before.shows(), after.shows());
        differ(found, "what told it apart", before.apart(), after.apart());
        differ(found, "what cured it", before.cure(), after.cure());
        differ(found, "state", before.state().words(), after.state().words());
        differ(found, "merged into number", text(before.mergedInto()), text(after.mergedInto()));
        differ(found, "times found true", text(before.confirmations()), text(after.confirmations()));
        return found;
    }

    private static void differ(List<Difference> found, String part, String before, String after) {
        if (!before.equals(after)) {
            found.add(new Difference(part, before, after));
        }
    }

    private static String text(@Nullable Object value) {
        return value == null ? "" : value.toString();
    }

    private record SupportingRow(int serial, String title, String device, Instant closed, String closedBy) {
        SupportingCase shown() {
            return new SupportingCase(new TicketNumber(serial).toString(), title, device, closed, closedBy);
        }
    }

    private List<SupportingCase> cases(long id) {
        return statement("supporting cases").with("cause", id).with("most", CASES).rows(SupportingRow.class).stream()
                .map(SupportingRow::shown)
                .toList();
    }

    private record FoundRow(List<String> findings) {}

    private static List<Set<String>> findings(Sql statement) {
        return statement.rows(FoundRow.class).stream()
                .map(row -> Set.copyOf(row.findings()))
                .toList();
    }

    private List<ToldApart> toldApart(KnownCause cause) {
        List<Set<String>> own =
                findings(statement("own findings").with("cause", cause.number()).with("most", CASES));
        List<Set<String>> others = findings(statement("other findings")
                .with("cause", cause.number())
                .with("category", cause.category.name())
                .with("newest", OTHERS));
        Map<String, Integer> having = new TreeMap<>();
        own.forEach(findings -> findings.forEach(f -> having.merge(f, 1, Integer::sum)));
        List<ToldApart> told = new ArrayList<>();
        having.forEach((finding, count) -> {
            int elsewhere =
                    (int) others.stream().filter(o -> o.contains(finding)).count();
            told.add(new ToldApart(findingWords.one(finding), count, own.size(), elsewhere, others.size()));
        });
        return told.stream()
                .filter(t -> t.lead() > 0)
                .sorted(Comparator.comparingDouble(ToldApart::lead).reversed())
                .limit(FINDINGS)
                .toList();
    }
}
