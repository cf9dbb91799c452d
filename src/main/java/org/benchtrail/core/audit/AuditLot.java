package org.benchtrail.core.audit;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.audit.AuditAct.AddendumAsked;
import org.benchtrail.core.audit.AuditAct.AddendumClosed;
import org.benchtrail.core.audit.AuditAct.Entry;
import org.benchtrail.core.audit.AuditAct.Item;
import org.benchtrail.core.audit.AuditAct.LotConcluded;
import org.benchtrail.core.audit.AuditAct.LotFrozen;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditAct.PlanStated;
import org.benchtrail.core.audit.AuditAct.RestDrawn;
import org.benchtrail.core.audit.AuditAct.ReviewDeclined;
import org.benchtrail.core.audit.AuditAct.ReviewGiven;
import org.benchtrail.core.audit.AuditAct.ReviewReturned;
import org.benchtrail.core.audit.AuditAct.ReviewSigned;
import org.benchtrail.core.audit.AuditAct.SampleDrawn;
import org.benchtrail.core.audit.AuditAct.SecondSigned;
import org.benchtrail.core.audit.AuditAct.SeedDrawn;
import org.benchtrail.core.audit.AuditAct.Settled;
import org.benchtrail.core.audit.AuditAct.TalkRecorded;
import org.benchtrail.core.audit.AuditAct.TicketChosen;
import org.benchtrail.core.integrity.Hash;

/** One lot as its acts tell it. Immutable; the acts are all that is kept. */
public final class AuditLot {
    private static final int SECOND_PERCENT = 10;
    private static final int SECOND_LEAST = 5;

    /** How far a lot is. */
    public enum State {
        STATED("plan stated"),
        FROZEN("frozen, waits for its head"),
        SEEDED("seed drawn"),
        DRAWN("drawn"),
        CONCLUDED("concluded");

        private final String words;

        State(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Which review of which ticket. */
    public record Turn(String ticket, int turn) {}

    /**
     * One review.
     *
     * @param despite why the reviewer is not independent; empty if they are
     * @param marks by requirement, the last of each
     * @param minutes that it took; 0 until it is signed
     */
    public record Review(
            Turn turn,
            String reviewer,
            Instant given,
            List<String> despite,
            Map<String, Marked> marks,
            boolean signed,
            long minutes) {
        public boolean independent() {
            return despite.isEmpty();
        }
    }

    private final String id;
    private final List<Entry> acts;
    private final Map<Turn, Review> reviews;
    private final Map<String, Item> items;
    private final List<String> second;

    private AuditLot(String id, List<Entry> acts) {
        this.id = id;
        this.acts = List.copyOf(acts);
        items = one(LotFrozen.class).map(LotFrozen::items).orElse(List.of()).stream()
                .collect(Collectors.toMap(Item::ticket, i -> i, (a, b) -> a, LinkedHashMap::new));
        reviews = reviewed(this.acts);
        second = second();
    }

    /** @param acts all there are, in their order; the first states the plan */
    public static AuditLot of(String id, List<Entry> acts) {
        return new AuditLot(id, acts);
    }

    private static Map<Turn, Review> reviewed(List<Entry> acts) {
        Map<Turn, Review> reviews = new LinkedHashMap<>();
        Map<Turn, Instant> began = new LinkedHashMap<>();
        for (Entry entry : acts) {
            AuditAct act = entry.act();
            if (act instanceof ReviewGiven given) {
                Turn turn = new Turn(given.ticket(), given.turn());
                reviews.put(
                        turn,
                        new Review(
                                turn, given.reviewer(), entry.at(), given.despite(), new LinkedHashMap<>(), false, 0));
            } else if (act instanceof ReviewDeclined declined) {
                reviews.remove(new Turn(declined.ticket(), declined.turn()));
            } else if (act instanceof ReviewReturned returned) {
                reviews.remove(new Turn(returned.ticket(), returned.turn()));
            } else if (act instanceof Marked marked) {
                Turn turn = new Turn(marked.ticket(), marked.turn());
                began.putIfAbsent(turn, entry.at());
                Objects.requireNonNull(reviews.get(turn)).marks().put(marked.requirement(), marked);
            } else if (act instanceof ReviewSigned signed) {
                reviews.computeIfPresent(new Turn(signed.ticket(), 1), (t, r) -> signed(r, signed.minutes()));
            } else if (act instanceof SecondSigned signed) {
                reviews.computeIfPresent(new Turn(signed.ticket(), 2), (t, r) -> signed(r, signed.minutes()));
            }
        }
        return reviews;
    }

    private static Review signed(Review r, long minutes) {
        return new Review(r.turn(), r.reviewer(), r.given(), r.despite(), r.marks(), true, minutes);
    }

    public String id() {
        return id;
    }

    public List<Entry> acts() {
        return acts;
    }

    private <A extends AuditAct> Optional<A> one(Class<A> kind) {
        return AuditAct.all(acts, kind).stream().findFirst();
    }

    public State state() {
        if (concluded().isPresent()) {
            return State.CONCLUDED;
        }
        if (one(SampleDrawn.class).isPresent()) {
            return State.DRAWN;
        }
        if (seed().isPresent()) {
            return State.SEEDED;
        }
        return frozen().isPresent() ? State.FROZEN : State.STATED;
    }

    /** As it was stated. */
    public String planText() {
        return one(PlanStated.class).orElseThrow().plan();
    }

    public AuditPlan plan() {
        return AuditPlan.parse(planText());
    }

    /** The numbers by which its signals were made. */
    public SignalNumbers signalNumbers() {
        return frozen().map(LotFrozen::signalsBy).orElse(SignalNumbers.USUAL);
    }

    public Optional<LotFrozen> frozen() {
        return one(LotFrozen.class);
    }

    /** Place of the freeze in the lot's chain; 0 before it. */
    public long frozenPlace() {
        return acts.stream()
                .filter(e -> e.act() instanceof LotFrozen)
                .mapToLong(Entry::place)
                .findFirst()
                .orElse(0);
    }

    /** When the list was fixed; the end of all time before it. */
    public Instant frozenAt() {
        return acts.stream()
                .filter(e -> e.act() instanceof LotFrozen)
                .map(Entry::at)
                .findFirst()
                .orElse(Instant.MAX);
    }

    public Optional<SeedDrawn> seed() {
        return one(SeedDrawn.class);
    }

    public Optional<LotConcluded> concluded() {
        return one(LotConcluded.class);
    }

    /** Whether these two have talked about how they read. */
    public boolean talked(ReaderAgreement pair) {
        return AuditAct.all(acts, TalkRecorded.class).stream()
                .anyMatch(talk -> talk.pair().isEmpty() || pair.isOf(talk.pair()));
    }

    /** Readers who agree so little that they have to talk, and have not. */
    public List<ReaderAgreement> talksDue() {
        return ReaderAgreement.of(this).stream()
                .filter(pair -> pair.asksForTalk() && !talked(pair))
                .toList();
    }

    public Optional<Item> item(String ticket) {
        return Optional.ofNullable(items.get(ticket));
    }

    public List<Item> items() {
        return List.copyOf(items.values());
    }

    /** The tickets of a stratum, in the order of the list. */
    public List<String> tickets(Stratum stratum) {
        return items.values().stream()
                .filter(i -> i.stratum() == stratum)
                .map(Item::ticket)
                .toList();
    }

    /** What the seed and the plan make of the list: by stratum, in drawn order; with all that was left where it was drawn. */
    public Map<Stratum, List<String>> sample() {
        Draw draw = draw();
        AuditPlan plan = plan();
        Map<Stratum, List<String>> sample = new LinkedHashMap<>();
        for (Stratum stratum : Stratum.values()) {
            List<String> of = tickets(stratum);
            if (!of.isEmpty()) {
                Take take = Objects.requireNonNull(plan.takes().get(stratum));
                int many = isRestDrawn() ? of.size() : take.of(of.size());
                sample.put(stratum, draw.order(of).subList(0, many));
            }
        }
        return sample;
    }

    private Draw draw() {
        return new Draw(Hash.ofHex(seed().orElseThrow().seed()));
    }

    /** By stratum, in the order of the strata; empty before it is drawn. */
    public Map<Stratum, List<String>> drawn() {
        Map<Stratum, List<String>> kept =
                one(SampleDrawn.class).map(SampleDrawn::drawn).orElse(Map.of());
        Map<Stratum, List<String>> rest =
                one(RestDrawn.class).map(RestDrawn::drawn).orElse(Map.of());
        Map<Stratum, List<String>> ordered = new LinkedHashMap<>();
        for (Stratum stratum : Stratum.values()) {
            if (kept.containsKey(stratum)) {
                List<String> all = new ArrayList<>(kept.get(stratum));
                all.addAll(rest.getOrDefault(stratum, List.of()));
                ordered.put(stratum, List.copyOf(all));
            }
        }
        return ordered;
    }

    public boolean isRestDrawn() {
        return one(RestDrawn.class).isPresent();
    }

    /** What is not drawn, by stratum in the order in which it would be; only once there is a seed. */
    public Map<Stratum, List<String>> rest() {
        Draw draw = draw();
        Map<Stratum, List<String>> rest = new LinkedHashMap<>();
        drawn().forEach((stratum, tickets) -> {
            List<String> order = draw.order(tickets(stratum));
            if (tickets.size() < order.size()) {
                rest.put(stratum, order.subList(tickets.size(), order.size()));
            }
        });
        return rest;
    }

    /** Tickets that somebody chose to have looked at as well, and that were not drawn later; in their order. */
    public List<TicketChosen> chosen() {
        List<String> drawn = drawnTickets();
        return AuditAct.all(acts, TicketChosen.class).stream()
                .filter(c -> !drawn.contains(c.ticket()))
                .toList();
    }

    public boolean isChosen(String ticket) {
        return chosen().stream().anyMatch(c -> c.ticket().equals(ticket));
    }

    /** All that are reviewed but for those that somebody chose, in the order in which they are given. */
    public List<String> drawnTickets() {
        return drawn().values().stream().flatMap(List::stream).toList();
    }

    /**
     * The tickets that a second person reviews: a tenth, at least five, and, once all first reviews are signed, one of each reviewer
     * who has none among them. A ticket whose second review was given stays one.
     */
    public List<String> secondTickets() {
        return second;
    }

    private List<String> second() {
        if (drawn().isEmpty()) {
            return List.of();
        }
        List<String> order = draw().secondOrder(drawnTickets());
        int most = Math.min(order.size(), Math.max(SECOND_LEAST, (order.size() * SECOND_PERCENT + 99) / 100));
        Set<String> second = new LinkedHashSet<>(order.subList(0, most));
        order.stream().filter(t -> review(t, 2).isPresent()).forEach(second::add);
        if (!isFirstReviewed()) {
            return List.copyOf(second);
        }
        Map<String, List<String>> byReviewer = new LinkedHashMap<>();
        for (String ticket : order) {
            review(ticket, 1)
                    .filter(Review::signed)
                    .ifPresent(r -> byReviewer
                            .computeIfAbsent(r.reviewer(), k -> new ArrayList<>())
                            .add(ticket));
        }
        byReviewer.values().stream()
                .filter(own -> own.stream().noneMatch(second::contains))
                .forEach(own -> second.add(own.get(0)));
        return List.copyOf(second);
    }

    /** @param turn 1 or 2 */
    public boolean isSigned(String ticket, int turn) {
        return review(ticket, turn).filter(Review::signed).isPresent();
    }

    /**
     * How many reviews that there are to be are not signed yet.
     *
     * @param turn 1 or 2
     */
    public long unsigned(int turn) {
        return (turn == 1 ? drawnTickets() : second)
                .stream().filter(t -> !isSigned(t, turn)).count();
    }

    private boolean isFirstReviewed() {
        return unsigned(1) == 0;
    }

    /** Whether every review is signed: before that, what one reader says is told to no other. */
    public boolean isReviewed() {
        return isFirstReviewed() && unsigned(2) == 0;
    }

    /** Whether every review that the ticket gets is signed; which tickets get a second one may hang on the last first review. */
    public boolean isReadable(String ticket) {
        return isSigned(ticket, 1) && (second.contains(ticket) ? isSigned(ticket, 2) : isFirstReviewed());
    }

    public Optional<Review> review(String ticket, int turn) {
        return Optional.ofNullable(reviews.get(new Turn(ticket, turn)));
    }

    public List<Review> reviews() {
        return List.copyOf(reviews.values());
    }

    /** The review that this person has begun or was given, and has not signed; nobody has two. */
    public Optional<Review> unfinished(String account) {
        return reviews.values().stream()
                .filter(r -> !r.signed() && r.reviewer().equals(account))
                .findFirst();
    }

    /** A review that somebody would not do, and why. */
    public record Declined(String who, String ticket, int turn, String why) {}

    /** In the order in which it was done. */
    public List<Declined> declined() {
        return acts.stream()
                .filter(e -> e.act() instanceof ReviewDeclined)
                .map(e -> {
                    ReviewDeclined act = (ReviewDeclined) e.act();
                    return new Declined(e.by(), act.ticket(), act.turn(), act.remark());
                })
                .toList();
    }

    public boolean hasDeclined(String ticket, String account) {
        return declined().stream()
                .anyMatch(d -> d.ticket().equals(ticket) && d.who().equals(account));
    }

    /** Reviews that were taken back from who might not review any more, in their order. */
    public List<ReviewReturned> returned() {
        return AuditAct.all(acts, ReviewReturned.class);
    }

    /** Where two signed reviews differ and nobody has settled it. */
    public List<Difference> differences() {
        return pairs().stream()
                .filter(d -> d.differs() && settled(d.ticket(), d.requirement()).isEmpty())
                .toList();
    }

    /** The marks of both readers of what both have signed. */
    public List<Difference> pairs() {
        List<Difference> pairs = new ArrayList<>();
        for (Review second : reviews.values()) {
            Review first = reviews.get(new Turn(second.turn().ticket(), 1));
            if (second.turn().turn() == 2 && second.signed() && first != null && first.signed()) {
                second.marks().forEach((requirement, mark) -> {
                    Marked other = first.marks().get(requirement);
                    if (other != null) {
                        pairs.add(new Difference(second.turn().ticket(), requirement, other, mark));
                    }
                });
            }
        }
        return pairs;
    }

    /** What two readers said of the same. */
    public record Difference(String ticket, String requirement, Marked first, Marked second) {
        public boolean differs() {
            return first.mark() != second.mark() || first.defect() != second.defect();
        }
    }

    public Optional<Settled> settled(String ticket, String requirement) {
        return AuditAct.all(acts, Settled.class).stream()
                .filter(s -> s.ticket().equals(ticket) && s.requirement().equals(requirement))
                .findFirst();
    }

    /** What was asked for, in its order. */
    public List<AddendumAsked> addendaAsked() {
        return AuditAct.all(acts, AddendumAsked.class);
    }

    /** How the asking ended, where nothing came. */
    public Optional<AddendumClosed> addendumClosed(String ticket, String requirement) {
        return AuditAct.all(acts, AddendumClosed.class).stream()
                .filter(c -> c.ticket().equals(ticket) && c.requirement().equals(requirement))
                .findFirst();
    }

    /** When the reviewer set the first mark of that review, for how long it took. */
    public Duration since(String ticket, int turn, Instant now) {
        return acts.stream()
                .filter(e -> e.act() instanceof Marked m && m.ticket().equals(ticket) && m.turn() == turn)
                .findFirst()
                .map(e -> Duration.between(e.at(), now))
                .orElse(Duration.ZERO);
    }

    /** The bytes by which the seed was made. */
    public Optional<Hash> seedAgain() {
        return seed().map(s -> Draw.of(
                        s.head().getBytes(StandardCharsets.UTF_8), planText().getBytes(StandardCharsets.UTF_8))
                .seed());
    }
}
