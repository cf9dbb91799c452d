package org.benchtrail.ticket;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** Tickets by what somebody remembers of them: words, the device, who reported it. */
@Startup
@ApplicationScoped
@Transactional
public class TicketSearch {
    /** Tickets shown at most. */
    public static final int MOST = 10;

    private static final String ALL = " & ";
    private static final String ANY = " | ";

    private final EntityManager database;
    private final SqlText text;

    TicketSearch(EntityManager database) {
        this.database = database;
        text = SqlText.of(TicketSearch.class).having("words", "spelling", "devices", "requesters");
    }

    /**
     * What was found by words, the newest first, at most {@link #MOST}.
     *
     * @param spelling what was looked for in place of mistyped words; empty if nothing was
     * @param loose whether no ticket has every word, so that one of them was enough
     */
    public record ByWords(List<TicketLine> tickets, String spelling, boolean loose) {}

    /**
     * A device as tickets name it.
     *
     * @param open how many open tickets it has, 100 at most
     * @param closed how many closed ones, 100 at most
     */
    public record OfDevice(String label, long open, long closed) {}

    /** A word, and the known one that is most like it; empty if the word begins one itself, or none is like it. */
    record Spelled(String word, String near) {}

    /** Every word first; if no ticket has them, with the spelling of mistyped ones put right; if none has, any of them. */
    public ByWords byWords(String typed, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        check(typed);
        List<String> words = SearchWords.of(typed, 1);
        if (words.isEmpty()) {
            return new ByWords(List.of(), "", false);
        }
        List<TicketLine> found = with(words, ALL).rows(TicketLine.class);
        if (!found.isEmpty()) {
            return new ByWords(found, "", false);
        }
        List<Spelled> spelled = spelling(words).rows(Spelled.class);
        List<String> better = spelled.stream()
                .map(s -> s.near().isEmpty() ? s.word() : s.near())
                .toList();
        String told = better.equals(words) ? "" : String.join(" ", better);
        List<TicketLine> corrected =
                told.isEmpty() ? List.of() : with(better, ALL).rows(TicketLine.class);
        if (!corrected.isEmpty() || better.size() == 1) {
            return new ByWords(corrected, corrected.isEmpty() ? "" : told, false);
        }
        List<TicketLine> any = with(better, ANY).rows(TicketLine.class);
        return new ByWords(any, any.isEmpty() ? "" : told, !any.isEmpty());
    }

    Sql with(List<String> words, String joined) {
        return Sql.of(database, text.statement("words"))
                .with("words", String.join(joined, SearchWords.beginnings(words)))
                .with("often", SearchWords.OFTEN)
                .with("gathered", SearchWords.FEW)
                .with("most", MOST);
    }

    Sql spelling(List<String> words) {
        return Sql.of(database, text.statement("spelling")).with("words", words.toArray(String[]::new));
    }

    /** Devices whose label has these words, or is like them; the likest first, at most six. */
    public List<OfDevice> devices(String typed, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        check(typed);
        return SearchWords.of(typed, 1).isEmpty() ? List.of() : devices(typed).rows(OfDevice.class);
    }

    Sql devices(String typed) {
        return Sql.of(database, text.statement("devices"))
                .with("words", query(typed))
                .with("typed", typed.strip().toLowerCase(Locale.ROOT));
    }

    /** The latest tickets of whoever has these words in their name, at most six. */
    public List<TicketLine> byRequester(String typed, Actor actor) {
        Permissions.require(Permission.READ_REQUESTERS, actor);
        check(typed);
        return SearchWords.of(typed, 2).isEmpty()
                ? List.of()
                : requesters(typed).rows(TicketLine.class);
    }

    Sql requesters(String typed) {
        return Sql.of(database, text.statement("requesters")).with("words", query(typed));
    }

    private static String query(String typed) {
        return String.join(ALL, SearchWords.beginnings(typed, 1));
    }

    private static void check(String typed) {
        new Invalid.Collector()
                .require(PlainText.isText(typed), "q", "Remove the control characters: only text can be searched for.")
                .require(typed.length() <= 400, "q", "Use fewer words: at most 400 characters.")
                .throwIfAny();
    }
}
