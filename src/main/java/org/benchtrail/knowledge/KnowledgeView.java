package org.benchtrail.knowledge;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.Times;
import org.jspecify.annotations.Nullable;

/** Known causes and cases in words, for one viewer. */
public final class KnowledgeView {
    private final Map<String, String> names;
    private final ZoneId zone;
    private final FindingWords findingWords;

    KnowledgeView(Map<String, String> names, ZoneId zone, FindingWords findingWords) {
        this.names = names;
        this.zone = zone;
        this.findingWords = findingWords;
    }

    /**
     * A known cause in a list.
     *
     * @param often how often and how surely it was found true, when last and by whom
     */
    public record CauseLine(
            long id,
            Highlighted title,
            String category,
            CauseState state,
            Highlighted shows,
            Highlighted apart,
            String often) {}

    /** A case in a list. */
    public record CaseLine(
            String number,
            Highlighted title,
            String device,
            Highlighted cause,
            String sureness,
            Highlighted passage,
            String findings,
            String closed,
            String effort) {}

    /** The page of a search. */
    public record Results(
            String typed,
            String category,
            String state,
            List<Option> categories,
            List<Option> states,
            boolean searched,
            List<CauseLine> causes,
            List<CaseLine> cases,
            String causesCount,
            String casesCount,
            String spelling,
            boolean loose,
            boolean newestOnly,
            boolean nothingYet,
            int page,
            @Nullable String previous,
            @Nullable String next) {}

    /**
     * The page of one known cause.
     *
     * @param confirming whether the viewer is neither an author of it nor has confirmed it
     */
    public record OneCause(
            CauseJson cause,
            CauseState state,
            String category,
            String often,
            String origin,
            @Nullable String flag,
            List<KnowledgeQueries.ToldApart> findings,
            List<SupportingLine> cases,
            List<HistoryLine> history,
            List<Option> categories,
            boolean tending,
            boolean confirming,
            boolean correcting,
            boolean curating) {
        public boolean confirmed() {
            return state == CauseState.CONFIRMED;
        }

        public boolean retired() {
            return state == CauseState.RETIRED;
        }
    }

    public record SupportingLine(String number, String title, String device, String closed) {}

    public record HistoryLine(
            String when,
            String who,
            String what,
            String reason,
            @Nullable String ticket,
            List<KnowledgeQueries.Difference> differences) {}

    CauseLine line(SearchResults.CauseHit hit) {
        return new CauseLine(
                hit.id(),
                hit.title(),
                hit.category().title(),
                hit.state(),
                hit.shows(),
                hit.apart(),
                often(hit.confirmations(), hit.measured(), hit.lastConfirmed(), hit.confirmedBy()));
    }

    CauseLine line(CauseJson cause) {
        return new CauseLine(
                cause.id(),
                Highlighted.plain(cause.text().title()),
                cause.text().category().title(),
                cause.state(),
                Highlighted.plain(cause.text().shows()),
                Highlighted.plain(cause.text().apart()),
                often(cause));
    }

    CaseLine line(SearchResults.CaseHit hit) {
        return new CaseLine(
                hit.number(),
                hit.title(),
                hit.device(),
                hit.cause(),
                hit.sureness().words(),
                hit.passage(),
                findingWords.all(hit.findings()),
                Times.text(hit.closed(), zone),
                hit.minutes() == null ? "" : hit.minutes() + " min");
    }

    private String often(CauseJson cause) {
        return often(cause.confirmations(), cause.measured(), cause.lastConfirmed(), cause.confirmedBy());
    }

    private String often(int confirmations, int measured, @Nullable Instant last, @Nullable String by) {
        String often = HowOften.confirmed(confirmations, measured);
        return last == null ? often : often + "; last " + Times.text(last, zone) + " by " + name(by);
    }

    private String name(@Nullable String account) {
        return account == null ? "" : names.getOrDefault(account, account);
    }

    OneCause one(KnowledgeQueries.WholeCause whole, Actor viewer) {
        CauseJson cause = whole.cause();
        boolean shown = cause.state() != CauseState.RETIRED;
        boolean tending = Permissions.allow(Permission.TEND_KNOWLEDGE, viewer);
        boolean curating = Permissions.allow(Permission.CURATE_KNOWLEDGE, viewer);
        return new OneCause(
                cause,
                cause.state(),
                cause.text().category().title(),
                often(cause),
                "written by " + name(cause.proposedBy()) + ", " + Times.text(cause.proposed(), zone),
                cause.state() == CauseState.FLAGGED ? flag(whole.history()) : null,
                whole.findings(),
                whole.cases().stream()
                        .map(c -> new SupportingLine(
                                c.number(),
                                c.title(),
                                c.device(),
                                Times.text(c.closed(), zone) + " by " + name(c.closedBy())))
                        .toList(),
                whole.history().stream().map(this::change).toList(),
                categories(),
                tending && shown,
                tending && shown && whole.awaits(viewer),
                (curating || (tending && cause.state() != CauseState.CONFIRMED)) && shown,
                curating);
    }

    /** Why, and who says so. */
    private @Nullable String flag(List<KnowledgeQueries.HistoryEntry> history) {
        return history.stream()
                .filter(c -> c.what() == CauseEvent.FLAGGED)
                .findFirst()
                .map(c -> c.reason() + " (" + name(c.who()) + ", " + Times.text(c.at(), zone) + ")")
                .orElse(null);
    }

    private HistoryLine change(KnowledgeQueries.HistoryEntry c) {
        return new HistoryLine(
                Times.text(c.at(), zone), name(c.who()), c.what().words(), c.reason(), c.ticket(), c.differences());
    }

    static List<Option> categories() {
        return Option.of(Category.class);
    }

    static List<Option> states() {
        return Stream.of(CauseState.values())
                .map(s -> new Option(s.name(), s.words()))
                .collect(Collectors.toList());
    }
}
