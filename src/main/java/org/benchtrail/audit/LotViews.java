package org.benchtrail.audit;

import io.quarkus.qute.RawString;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.audit.LotView.Pair;
import org.benchtrail.core.audit.AuditAct;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.State;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.AuditRules;
import org.benchtrail.core.audit.DrawCheck;
import org.benchtrail.core.audit.LotResult;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.audit.Outlook;
import org.benchtrail.core.audit.ReaderAgreement;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.audit.Take;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.SvgChart;
import org.jspecify.annotations.Nullable;

/** A lot as one viewer sees it. */
final class LotViews {
    private static final int MOST_CHOSEN = AuditRules.MOST_CHOSEN;
    private static final int FEWEST_FOR_A_LINE = 8;

    private final AuditLot lot;
    private final Actor viewer;
    private final ZoneId zone;
    private final Map<String, String> names;
    private final List<Actor> reviewers;
    private final List<LotRows.AddendumRow> addenda;
    private final Instant now;
    private final LotRows.Gap before;
    private final List<SignalViews.SignalLine> signals;
    private final List<Turn> stuck;
    private final List<DrawCheck.Fault> altered;

    LotViews(
            AuditLot lot,
            Actor viewer,
            ZoneId zone,
            Map<String, String> names,
            List<Actor> reviewers,
            List<LotRows.AddendumRow> addenda,
            Instant now,
            LotRows.Gap before,
            List<SignalViews.SignalLine> signals,
            List<Turn> stuck,
            List<DrawCheck.Fault> altered) {
        this.lot = lot;
        this.viewer = viewer;
        this.zone = zone;
        this.names = names;
        this.reviewers = reviewers;
        this.addenda = addenda;
        this.now = now;
        this.before = before;
        this.signals = signals;
        this.stuck = stuck;
        this.altered = altered;
    }

    LotView view() {
        boolean drawn = lot.state().compareTo(State.DRAWN) >= 0;
        return new LotView(
                lot.id(),
                lot.state(),
                progress(lot),
                lot.planText().lines().toList(),
                facts(),
                parts(),
                outlook(),
                drawn ? check() : null,
                reviews(true),
                reviews(false),
                givenBack(),
                lot.state() == State.DRAWN ? Giving.open(lot).size() : 0,
                left(),
                Permissions.allow(Permission.PLAN_AUDITS, viewer)
                        ? reviewers.stream()
                                .map(a -> new Option(a.account(), a.name()))
                                .toList()
                        : List.of(),
                isOpenToReaders() ? differences() : List.of(),
                drawn && isOpenToReaders() ? result() : null,
                addendumLines(),
                lot.state() == State.DRAWN ? AuditRules.obstacles(lot) : List.of(),
                conclusion(),
                next(),
                signals,
                chosen(),
                stuck.stream().map(this::stuck).toList());
    }

    private String left() {
        int open = lot.state() == State.DRAWN ? Giving.openTo(lot, viewer) : 0;
        long each = Giving.minutesEach(lot);
        return open == 0
                ? ""
                : (open == 1 ? "1 is" : open + " are") + " left that you may take, about " + open * each + " min"
                        + (open == 1 ? "" : " in all, " + each + " each");
    }

    /** What follows if the lot is not accepted, for whoever decides it. */
    private LotView.Next next() {
        boolean decides = Permissions.allow(Permission.PLAN_AUDITS, viewer);
        int rest = AuditRules.isRestDue(lot)
                ? lot.rest().values().stream().mapToInt(List::size).sum()
                : 0;
        boolean choose = decides
                && rest == 0
                && lot.state() == State.DRAWN
                && lot.chosen().size() < MOST_CHOSEN;
        return new LotView.Next(rest, decides, AuditRules.isDoublingDue(lot), choose && isLeft());
    }

    private boolean isLeft() {
        return lot.items().size() > lot.drawnTickets().size() + lot.chosen().size();
    }

    private List<LotView.Chosen> chosen() {
        return lot.chosen().stream()
                .map(c -> new LotView.Chosen(c.ticket(), c.remark(), chosenState(c.ticket())))
                .toList();
    }

    private String chosenState(String ticket) {
        if (!lot.isSigned(ticket, 1)) {
            return "not reviewed yet";
        }
        if (!isOpenToReaders()) {
            return "reviewed";
        }
        long faults = LotResult.counting(lot, ticket).stream()
                .filter(m -> m.mark() == Mark.NOT_SATISFIED)
                .count();
        return faults == 0 ? "reviewed, nothing found" : "reviewed, " + faults + " not satisfied";
    }

    private String stuck(Turn turn) {
        List<String> who = new ArrayList<>();
        lot.declined().stream()
                .filter(d -> d.ticket().equals(turn.ticket()))
                .map(d -> name(d.who()) + " declined it")
                .distinct()
                .forEach(who::add);
        lot.review(turn.ticket(), 3 - turn.turn())
                .ifPresent(
                        r -> who.add(name(r.reviewer()) + (turn.turn() == 2 ? " read it first" : " read it second")));
        return (turn.turn() == 1 ? "The review of " : "The second review of ") + turn.ticket()
                + " needs another person: " + String.join(", ", who)
                + ", and nobody else who may review is independent.";
    }

    private String name(String account) {
        return names.getOrDefault(account, account);
    }

    private String time(Instant at) {
        return Moments.text(at, zone);
    }

    static String progress(AuditLot lot) {
        if (lot.state() != State.DRAWN) {
            return lot.state().words();
        }
        int first = lot.drawnTickets().size();
        int second = lot.secondTickets().size();
        String rest = AuditRules.isRestDue(lot) ? "not accepted, the rest is to be drawn: " : "drawn, ";
        return rest + (first - lot.unsigned(1)) + " of " + first + " reviewed, " + (second - lot.unsigned(2)) + " of "
                + second + " a second time";
    }

    /** Whether all reviews are signed: before that, what one reader says is shown to no other. */
    private boolean isOpenToReaders() {
        return lot.state() == State.CONCLUDED || (lot.state() == State.DRAWN && lot.isReviewed());
    }

    private List<Pair> facts() {
        List<Pair> facts = new ArrayList<>();
        facts.add(new Pair(
                "Period", time(lot.plan().from()) + " to " + time(lot.plan().until())));
        facts.add(new Pair("Stated", stated()));
        facts.add(new Pair("Before it", gap(before, lot.plan().from(), zone)));
        lot.frozen().ifPresent(frozen -> {
            facts.add(
                    new Pair("Tickets in the lot", String.valueOf(frozen.items().size())));
            facts.add(new Pair("Still open at its end", open(frozen)));
        });
        if (isOpenToReaders()) {
            AuditAct.all(lot.acts(), AuditAct.TalkRecorded.class)
                    .forEach(talk -> facts.add(new Pair(talked(talk.pair()), talk.remark())));
        }
        if (!lot.returned().isEmpty()) {
            facts.add(new Pair(
                    "Taken back",
                    lot.returned().stream()
                                    .map(r -> r.ticket() + " from " + name(r.reviewer()))
                                    .collect(Collectors.joining(", "))
                            + ", who may not review any more"));
        }
        lot.seed()
                .ifPresent(seed -> facts.add(new Pair(
                        "Drawn by",
                        seed.witness().isEmpty()
                                ? "the shop's own number: no witness signed the head, so whoever holds the log's key could have tried several"
                                : "the head of " + seed.size() + " leaves that " + seed.witness()
                                        + " signed first after the freeze")));
        return facts;
    }

    /** Which tickets belong to no lot because it begins when it does. */
    static String gap(LotRows.Gap gap, Instant from, ZoneId zone) {
        Instant since = gap.since();
        if (from.equals(since)) {
            return "it begins where the lot before it ended";
        }
        String between = since == null
                ? "before this first lot"
                : "between " + Moments.text(since, zone) + " and " + Moments.text(from, zone);
        return switch ((int) Math.min(2, gap.tickets())) {
            case 0 -> "no ticket ended " + between;
            case 1 -> "1 ticket ended " + between + " and belongs to no lot";
            default -> gap.tickets() + " tickets ended " + between + " and belong to no lot";
        };
    }

    private String stated() {
        AuditAct.Entry first = lot.acts().get(0);
        return name(first.by()) + ", " + time(first.at())
                + (first.at().isAfter(lot.plan().from())
                        ? "; what had ended in the period by then was known when it was stated"
                        : "");
    }

    private List<LotView.GivenBack> givenBack() {
        Map<String, List<AuditLot.Declined>> byPerson = lot.declined().stream()
                .collect(Collectors.groupingBy(AuditLot.Declined::who, LinkedHashMap::new, Collectors.toList()));
        List<LotView.GivenBack> lines = new ArrayList<>();
        byPerson.forEach((who, declined) -> lines.add(new LotView.GivenBack(
                name(who),
                declined.size(),
                declined.stream()
                        .map(d -> d.ticket()
                                + (d.turn() == 1 ? "" : ", second review")
                                + (isOpenToReaders() ? ": " + d.why() : ""))
                        .collect(Collectors.joining("; ")))));
        return lines;
    }

    /** How many and how old, so that bad tickets which are left open are seen. */
    private String open(AuditAct.LotFrozen frozen) {
        Instant oldest = frozen.oldest();
        return frozen.open() == 0 || oldest == null
                ? "none"
                : frozen.open() + ", not in the lot; the oldest was opened "
                        + Moments.text(oldest, zone) + ", "
                        + days(Duration.between(oldest, lot.plan().until()).toDays()) + " before";
    }

    private static String days(long days) {
        return days == 1 ? "1 day" : days + " days";
    }

    private List<LotView.Part> parts() {
        List<LotView.Part> parts = new ArrayList<>();
        if (lot.frozen().isEmpty()) {
            return parts;
        }
        for (Stratum stratum : Stratum.values()) {
            int items = lot.tickets(stratum).size();
            if (items > 0) {
                Take take = take(stratum);
                List<String> drawn = lot.drawn().getOrDefault(stratum, List.of());
                int signed =
                        (int) drawn.stream().filter(t -> lot.isSigned(t, 1)).count();
                parts.add(new LotView.Part(
                        stratum.title(),
                        items,
                        lot.drawn().isEmpty() ? take.of(items) : drawn.size(),
                        signed,
                        how(take.of(items), items)));
            }
        }
        return parts;
    }

    private String how(int taken, int items) {
        if (taken == items) {
            return "all of them";
        }
        return lot.isRestDrawn() ? taken + " at random, then the rest" : "at random";
    }

    private Take take(Stratum stratum) {
        return Objects.requireNonNull(lot.plan().takes().get(stratum));
    }

    /** Of the largest part that is sampled. */
    private LotView.@Nullable Shown outlook() {
        Stratum largest = null;
        for (Stratum stratum : Stratum.values()) {
            int items = lot.tickets(stratum).size();
            boolean sampled = items > 0 && take(stratum).of(items) < items;
            if (sampled && (largest == null || items > lot.tickets(largest).size())) {
                largest = stratum;
            }
        }
        if (largest == null) {
            return null;
        }
        int items = lot.tickets(largest).size();
        Outlook outlook = Outlook.of(items, take(largest).of(items), lot.plan().acceptance());
        return new LotView.Shown(largest.title(), outlook, curve(outlook));
    }

    /** Dots where there is a handful of tickets, and nothing where the plan accepts the lot in all that would be drawn. */
    static @Nullable RawString curve(Outlook outlook) {
        List<Outlook.Point> points = outlook.curve();
        if (points.stream().mapToDouble(Outlook.Point::accepted).distinct().count() < 2) {
            return null;
        }
        return SvgChart.draw(new Chart(
                "tickets with a defect, of " + outlook.items(),
                "chance that the lot is accepted",
                List.of(new Chart.Series(
                        "by this plan",
                        points.size() < FEWEST_FOR_A_LINE ? Chart.Kind.DOTS : Chart.Kind.LINE,
                        points.stream()
                                .map(p -> Chart.Point.at(p.defects(), p.accepted()))
                                .toList()))));
    }

    private LotView.Check check() {
        AuditAct.SeedDrawn seed = lot.seed().orElseThrow();
        String again = lot.seedAgain().map(Hash::hex).orElse("");
        return new LotView.Check(
                seed.seed(),
                again,
                altered.stream().map(DrawCheck.Fault::sentence).toList(),
                seed.head(),
                hash(seed.head()),
                hash(lot.planText()),
                seed.size(),
                LotList.size(lot),
                LotList.printed(lot));
    }

    private static String hash(String text) {
        return Hash.sha256(text.getBytes(StandardCharsets.UTF_8)).hex();
    }

    private List<LotView.ReviewLine> reviews(boolean own) {
        return lot.reviews().stream()
                .filter(r -> own == (!r.signed() && r.reviewer().equals(viewer.account())))
                .map(r -> new LotView.ReviewLine(
                        r.turn().ticket(),
                        r.turn().turn() == 1 ? "review" : "second review",
                        name(r.reviewer()),
                        r.signed()
                                ? "signed, " + r.minutes() + " min"
                                : r.marks().isEmpty() ? "not begun" : r.marks().size() + " marked",
                        own || (r.signed() && isOpenToReaders()) ? link(r.turn()) : ""))
                .toList();
    }

    private String link(Turn turn) {
        return "/audit/" + lot.id() + "/reviews/" + turn.ticket() + "/" + turn.turn();
    }

    private List<LotView.DifferenceLine> differences() {
        return lot.pairs().stream()
                .filter(AuditLot.Difference::differs)
                .map(d -> new LotView.DifferenceLine(
                        d.ticket(),
                        d.requirement(),
                        title(d.requirement()),
                        words(d.first()),
                        words(d.second()),
                        remarks(d),
                        lot.settled(d.ticket(), d.requirement())
                                .map(s -> words(s.mark(), s.defect()) + ": " + s.remark())
                                .orElse("")))
                .toList();
    }

    private static String remarks(AuditLot.Difference d) {
        return String.join(
                " / ",
                List.of(d.first().remark(), d.second().remark()).stream()
                        .filter(r -> !r.isBlank())
                        .toList());
    }

    static String title(String requirement) {
        return Requirements.of(requirement).map(Requirement::title).orElse(requirement);
    }

    static String words(Marked marked) {
        return words(marked.mark(), marked.defect());
    }

    private static String words(Mark mark, @Nullable DefectClass defect) {
        return mark.words() + (defect == null ? "" : ", " + defect.words());
    }

    private LotView.Result result() {
        LotResult result = LotResult.of(lot);
        List<LotView.DefectLine> defects = Stream.concat(
                        lot.drawnTickets().stream(), lot.chosen().stream().map(c -> c.ticket()))
                .flatMap(t -> LotResult.counting(lot, t).stream())
                .filter(m -> m.mark() == Mark.NOT_SATISFIED || m.mark() == Mark.CANNOT_TELL)
                .map(m -> new LotView.DefectLine(
                        m.ticket(),
                        m.requirement(),
                        title(m.requirement()),
                        words(m),
                        m.remark(),
                        m.mark() == Mark.NOT_SATISFIED
                                && lot.addendaAsked().stream()
                                        .noneMatch(a -> a.ticket().equals(m.ticket())
                                                && a.requirement().equals(m.requirement()))))
                .toList();
        return new LotView.Result(
                result,
                meaning(result),
                defects,
                ReaderAgreement.of(lot).stream().map(this::agreement).toList());
    }

    static String meaning(LotResult result) {
        if (result.items() == 0) {
            return result.apart().isEmpty()
                    ? "No ticket ended in the period, so there is nothing to say."
                    : "No ticket was reviewed by somebody independent, so nothing can be said.";
        }
        String counted = "Of " + result.items() + " tickets, ";
        if (result.isCensus()) {
            int unsure = result.upper() - result.lower();
            return counted + result.lower() + (result.lower() == 1 ? " has" : " have") + " a critical or major defect"
                    + (unsure == 0 ? "" : ", and of " + unsure + " it cannot be told")
                    + ". Every one was looked at.";
        }
        return counted + "between " + result.lower() + " and " + result.upper()
                + " have a critical or major defect: if lots like this one were drawn again and again, such a range would hold the"
                + " true number in at least 95 of 100. The best guess is "
                + (result.point() == Math.rint(result.point())
                        ? String.valueOf(Math.round(result.point()))
                        : String.format(Locale.ROOT, "%.1f", result.point()))
                + ". It says nothing about a ticket that was not drawn.";
    }

    private String talked(List<String> readers) {
        return (readers.isEmpty()
                        ? "The two readers"
                        : readers.stream().map(this::name).collect(Collectors.joining(" and ")))
                + " talked";
    }

    private LotView.Agreement agreement(ReaderAgreement agreement) {
        String kappa = agreement
                .kappa()
                .map(k -> k.kappa().isPresent()
                        ? String.format(
                                Locale.ROOT,
                                "Kappa %.2f, standard error %.2f. Where nearly all is satisfied it is low by its nature.",
                                k.kappa().getAsDouble(),
                                k.error().orElse(0))
                        : "Both set one and the same mark everywhere, so kappa is not defined.")
                .orElse("Fewer than 30 pairs: too few for kappa.");
        List<LotView.Agreement.Row> rows = new ArrayList<>();
        for (Mark mark : Mark.values()) {
            rows.add(new LotView.Agreement.Row(mark.words(), agreement.table().get(mark.ordinal())));
        }
        return new LotView.Agreement(
                name(agreement.one()),
                name(agreement.other()),
                agreement.one() + "/" + agreement.other(),
                agreement.pairs(),
                agreement.agreed(),
                kappa,
                agreement.asksForTalk()
                        ? agreement.mostApart().stream()
                                .map(code -> rewrite(
                                        code,
                                        Objects.requireNonNull(agreement.apart().get(code))))
                                .toList()
                        : List.of(),
                List.of(Mark.values()).stream().map(Mark::words).toList(),
                rows,
                agreement.asksForTalk() && !lot.talked(agreement));
    }

    /** What is said of the requirement that two readers who agree little differ on most often. */
    private static String rewrite(String code, long times) {
        return "They differ most often on '" + title(code) + "', " + (times == 1 ? "once" : times + " times")
                + ": its question is to be written anew. It asks now: "
                + Requirements.of(code).map(r -> r.review().question()).orElse(code);
    }

    private List<LotView.AddendumLine> addendumLines() {
        return lot.addendaAsked().stream()
                .map(a -> {
                    LotRows.AddendumRow row = addenda.stream()
                            .filter(r -> r.isAbout(a.ticket(), a.requirement()))
                            .findFirst()
                            .orElseThrow();
                    return new LotView.AddendumLine(
                            a.ticket(),
                            title(a.requirement()),
                            a.remark(),
                            name(row.askedOf()),
                            time(a.due()),
                            row.entry(),
                            state(a, row),
                            isClosable(a, row) ? a.ticket() + "/" + a.requirement() : "");
                })
                .toList();
    }

    private String state(AuditAct.AddendumAsked asked, LotRows.AddendumRow row) {
        return row.entry() != null
                ? "written as entry " + row.entry()
                : lot.addendumClosed(asked.ticket(), asked.requirement())
                        .map(c -> "closed without it: " + c.remark())
                        .orElse(now.isAfter(asked.due()) ? "not written in time" : "not written yet");
    }

    private boolean isClosable(AuditAct.AddendumAsked asked, LotRows.AddendumRow row) {
        return Permissions.allow(Permission.PLAN_AUDITS, viewer)
                && row.entry() == null
                && !row.closed()
                && now.isAfter(asked.due())
                && !row.askedOf().equals(viewer.account());
    }

    private LotView.@Nullable Conclusion conclusion() {
        return lot.acts().stream()
                .filter(e -> e.act() instanceof AuditAct.LotConcluded)
                .findFirst()
                .map(e -> {
                    AuditAct.LotConcluded end = (AuditAct.LotConcluded) e.act();
                    String otherwise = lot.isRestDrawn()
                            ? "the rest of it was reviewed"
                            : lot.plan().otherwise().words();
                    String accepted = !LotResult.isSampled(lot)
                            ? ""
                            : end.accepted()
                                    ? "By the plan the random part is accepted: it had no more defects than the plan allows, which does not"
                                            + " show that no other ticket has one. "
                                    : "The random part had more defects than the plan allows: " + otherwise + ". ";
                    return new LotView.Conclusion(accepted + end.remark(), name(e.by()) + ", " + time(e.at()));
                })
                .orElse(null);
    }
}
