package org.benchtrail.core.diagnosis.path;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.diagnosis.Action;
import org.benchtrail.core.diagnosis.Advice;
import org.benchtrail.core.diagnosis.Evidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.diagnosis.Report;

/**
 * In which order the tests on offer are made. First what is about the places and causes that lead, or what the words of the ticket
 * raise; then what only parts the places; then the log, unless the fault comes and goes; what the case has to be opened for comes
 * last, unless it is open already or proves what is believed rather than not. Only tests of one of these turns are shown together,
 * beside the first those that have a reason of their own.
 *
 * <p>Within a turn: of those that bring a fair part of what the best one brings, those first that save most for each minute they
 * take, so that a quick look comes before a long trial. A short proof of a cause that leads comes first; what the words of the
 * ticket raise or name, and before it what would settle the leading causes, comes sooner; what needs a spare comes later. What is about
 * places that hardly anything speaks for is left out, once the fault is placed what is about other places as well, and once it is
 * rather in one place than in all others together also the log, which would only tell the place. Our choice.
 */
final class TestOrder {
    /** A test that brings less than this part of what the best one brings is not worth its turn. */
    private static final double FAIR_PART = 0.35;

    /** The same for one that would settle a leading cause. */
    private static final double SETTLING_PART = 0.1;

    /** The words raise its question. */
    private static final double SUGGESTED = 3;

    /** To turn to a test, and to write down what came of it, takes time whatever it is, minutes. */
    private static final double TURNING_TO = 3;

    /** Belief in one place from which on tests of other places are left out. */
    private static final double PLACED = 0.75;

    /** A place leads that has this part of the belief in the first. */
    private static final double BESIDE_THE_FIRST = 0.6;

    /** What is worth less than this part of the first is not shown beside it. */
    private static final double BESIDE = 0.7;

    private static final double NAMED = 1.5;
    private static final double SETTLING = 4;
    private static final double LEADING_PLACE = 1.5;
    /** A spare has to be found first. */
    private static final double SPARE = 0.4;

    /** Belief in a cause from which on its own test is worth making first. */
    private static final double LEADING = 0.1;

    private static final int LEADERS = 3;

    /** Belief in the leading cause from which on a short proof of it comes first. */
    private static final double LEAD = 0.3;

    private static final double SHORT = 10;
    /** Rather there than anywhere else. */
    private static final double LIKELY = 0.5;

    /** Belief in the places that a test is about below which it is left out. */
    private static final double IN_QUESTION = 0.08;
    /** The same for what lies on either side of a test that parts the places. */
    private static final double ON_A_SIDE = 0.12;

    private final PlacedModel model;
    private final Advice advice;
    private final Cues cues;
    private final boolean opened;
    private final Map<String, Double> masses;
    private final String place;
    private final Set<String> settling = new HashSet<>();
    /** What settles the cause that leads. */
    private final Set<String> proofs;
    /** What is presumed to be as usual, from something else; it is looked at where the words raise it. */
    private final Set<String> presumed;
    /** What the best test saves, minutes. */
    private double most;

    /** What comes before what, whatever it saves. */
    private enum Turn {
        /** What is done from outside to a place that leads, settles a cause that leads, or is raised by the words. */
        LED,
        /** The same inside, where nothing that leads is outside. */
        LED_INSIDE,
        /** What only parts the places, or is about others. */
        PARTING,
        /** What is read in a log about a fault that can be seen. */
        LOG,
        /** What the case has to be opened for. */
        INSIDE
    }

    private TestOrder(PlacedModel model, Ranking ranking, Advice advice, Cues cues, boolean opened) {
        this.opened = opened;
        this.model = model;
        this.advice = advice;
        this.cues = cues;
        presumed = presumed(model, ranking.evidence());
        masses = model.masses(ranking.partProbabilities());
        place = masses.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("");
        ranking.all().stream()
                .filter(r -> r.probability() >= LEADING)
                .limit(LEADERS)
                .map(r -> model.subjects().settling(r.cause()))
                .forEach(settling::addAll);
        proofs = proofs(model, ranking);
    }

    /** What settles the cause that leads; nothing once one of it spoke for the cause: then what mends it says more than another. */
    private static Set<String> proofs(PlacedModel model, Ranking ranking) {
        String leader = ranking.topListed();
        Set<String> settling = model.subjects().settling(leader);
        Map<String, Report> answers = Equipment.latest(ranking.evidence());
        boolean shown = model.model().category().findings().stream()
                .filter(f -> settling.contains(f.id()))
                .anyMatch(f -> {
                    Report answer = answers.get(f.id());
                    return answer != null && !f.usual().equals(answer.value());
                });
        return ranking.probability(leader) < LEAD || shown ? Set.of() : settling;
    }

    private static Set<String> presumed(PlacedModel model, Evidence evidence) {
        List<Report> presumed = evidence.reports().stream()
                .filter(r -> r.presumed() && r.isAnswer())
                .toList();
        return model.model().category().findings().stream()
                .filter(f -> presumed.stream()
                        .anyMatch(r -> r.finding().equals(f.id()) && r.value().equals(f.usual())))
                .map(Finding::id)
                .collect(Collectors.toSet());
    }

    /**
     * @param all the tests in their order
     * @param near those of them that are not worth far less than the first
     */
    record Order(List<Action> all, List<Action> near) {
        Order {
            all = List.copyOf(all);
            near = List.copyOf(near);
        }
    }

    static Order of(PlacedModel m, Ranking ranking, Advice advice, Cues cues, boolean opened) {
        return new TestOrder(m, ranking, advice, cues, opened).order();
    }

    private Order order() {
        List<Action> tests = advice.actions().stream()
                .filter(a -> a.type() == Action.Type.TEST && (saved(a) > 0 || isPointedTo(a)))
                .toList();
        most = tests.stream()
                .filter(a -> isInQuestion(a.id()))
                .mapToDouble(this::saved)
                .max()
                .orElse(0);
        List<Action> worthIt = tests.stream().filter(this::isWorthIt).toList();
        List<Action> order = worthIt.stream()
                .sorted(Comparator.comparing(this::turn)
                        .thenComparing(a -> !isProof(a))
                        .thenComparing(a -> isProof(a) ? a.minutes() : 0)
                        .thenComparingDouble(a -> -worth(a))
                        .thenComparing(Action::id))
                .toList();
        if (order.isEmpty()) {
            return new Order(order, order);
        }
        Turn turn = turn(order.get(0));
        double first = worth(order.get(0));
        List<Action> near = order.stream()
                .filter(a -> turn(a) == turn && (isProof(a) || worth(a) >= BESIDE * first))
                .filter(a -> a == order.get(0) || hasReason(a))
                .toList();
        return new Order(order, turn == Turn.PARTING || turn == Turn.LOG ? near.subList(0, 1) : unlike(near));
    }

    /** Without what is done to the very part that an earlier one is done to: one of them says what the other would. */
    private List<Action> unlike(List<Action> near) {
        Set<String> parts = new HashSet<>();
        return near.stream()
                .filter(a -> touched(a).filter(part -> !parts.add(part)).isEmpty())
                .toList();
    }

    /** The one part that a test takes off, replaces, leaves out or moves. */
    private Optional<String> touched(Action test) {
        return Optional.ofNullable(model.subjects().touched().get(test.id()));
    }

    /**
     * The words of the ticket raise its question, and to answer it is short. What they say of another place waits once the fault
     * is rather in one place than in all others together: who has found a crushed cord does not follow what else was mentioned.
     */
    private boolean isRaised(Action test) {
        return cues.findings().contains(test.id()) && test.minutes() <= SHORT && !isElsewhere(test.id());
    }

    private boolean isElsewhere(String test) {
        Set<String> segments = model.subjects().segments(test);
        return masses.getOrDefault(place, 0.0) >= LIKELY && !segments.isEmpty() && !segments.contains(place);
    }

    /** Beside the first only what settles a leading cause, or what the words raise or name: a list of all that is nearly as good is no advice. */
    private boolean hasReason(Action test) {
        return isRaised(test)
                || settling.contains(test.id())
                || model.subjects().segments(test.id()).stream().anyMatch(cues.segments()::contains);
    }

    private boolean isOfTheWhole(Action test) {
        return Optional.ofNullable(model.subjects().made().get(test.id()))
                .filter(t -> PathAct.OF_THE_WHOLE.contains(t.act()) && t.act() != PathAct.UNDO)
                .isPresent();
    }

    /** Whether something that leads says that it should be made. */
    private boolean isLed(Action test) {
        return isRaised(test)
                || settling.contains(test.id())
                || (!isOfTheWhole(test)
                        && model.subjects().segments(test.id()).stream().anyMatch(this::leads));
    }

    private Turn turn(Action test) {
        Optional<GenericTest> made = Optional.ofNullable(model.subjects().made().get(test.id()));
        if (made.filter(t -> t.act() == PathAct.LOG).isPresent()) {
            return cues.fleeting() ? Turn.LED : Turn.LOG;
        }
        if (isProof(test) && masses.getOrDefault(place, 0.0) >= LIKELY) {
            return Turn.LED;
        }
        if (!opened && model.subjects().inside().contains(test.id())) {
            return isLed(test) && nothingLeadsOutside() ? Turn.LED_INSIDE : Turn.INSIDE;
        }
        return isLed(test) ? Turn.LED : Turn.PARTING;
    }

    private boolean nothingLeadsOutside() {
        return model.layout().segments().stream().filter(s -> leads(s.id())).allMatch(Segment::inside);
    }

    private boolean leads(String segment) {
        return masses.getOrDefault(segment, 0.0) >= BESIDE_THE_FIRST * masses.getOrDefault(place, 0.0);
    }

    /** What a test saves on average, minutes. */
    private double saved(Action test) {
        return advice.planMinutes() - test.expectedMinutes();
    }

    private boolean isWorthIt(Action test) {
        if (presumed.contains(test.id())) {
            return isRaised(test);
        }
        double part = settling.contains(test.id()) ? SETTLING_PART : FAIR_PART;
        return isPointedTo(test) || (saved(test) >= part * most && isInQuestion(test.id()));
    }

    /** By the words of the ticket, or because it is a short proof of the cause that leads. */
    private boolean isPointedTo(Action test) {
        return isRaised(test) || isProof(test);
    }

    private boolean isProof(Action test) {
        return proofs.contains(test.id()) && test.minutes() <= SHORT;
    }

    private boolean isInQuestion(String test) {
        Set<String> segments = model.subjects().segments(test);
        if (masses.getOrDefault(place, 0.0) >= PLACED) {
            return segments.contains(place);
        }
        if (!segments.isEmpty()) {
            return mass(segments) >= IN_QUESTION;
        }
        if (test.equals(GenericTest.LOG)) {
            return cues.fleeting() || masses.getOrDefault(place, 0.0) < LIKELY;
        }
        return Optional.ofNullable(model.subjects().made().get(test))
                .map(t -> {
                    double in = mass(Set.copyOf(t.segments()));
                    return in >= ON_A_SIDE && in <= 1 - ON_A_SIDE;
                })
                .orElse(true);
    }

    private double mass(Set<String> segments) {
        return segments.stream().mapToDouble(s -> masses.getOrDefault(s, 0.0)).sum();
    }

    private double worth(Action test) {
        Set<String> segments = model.subjects().segments(test.id());
        double least = isRaised(test) ? FAIR_PART * most : 0;
        double worth = (Math.max(saved(test), least) + test.minutes()) / (test.minutes() + TURNING_TO);
        worth *= segments.stream().anyMatch(cues.segments()::contains) ? NAMED : 1;
        worth *= segments.contains(place) ? LEADING_PLACE : 1;
        worth *= isRaised(test) ? SUGGESTED : 1;
        worth *= settling.contains(test.id()) ? SETTLING : 1;
        return Optional.ofNullable(model.subjects().made().get(test.id()))
                        .filter(t -> !t.with().isEmpty())
                        .isPresent()
                ? worth * SPARE
                : worth;
    }
}
