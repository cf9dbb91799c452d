package org.benchtrail.core.diagnosis;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** What makes the entries of format 2 acceptable: findings that say how they are made, and what they are fed by. */
final class MakingRules {
    static final Set<String> NEEDS = Set.of(
            "backup-done",
            "change-approved",
            "hazard-cleared",
            "owner-asked",
            "key-at-hand",
            "device-isolated",
            "outage-announced");
    private static final Map<Nominal.By, Set<String>> CASES = Map.of(
            Nominal.By.MAINS, Set.of("100", "120", "230"),
            Nominal.By.MEMORY, Set.of("DDR3", "DDR3L", "DDR4", "DDR5"),
            Nominal.By.DRIVE, Set.of("turning", "solid-state"),
            Nominal.By.NAMEPLATE, Set.of());
    private static final int LABEL = 70;
    private static final int SENTENCES = 240;
    private static final int LEAST_PHRASE = 2;
    private static final int MOST_PHRASE = 60;

    private final Consumer<Invalid.Problem> problems;
    private final CauseCategory category;
    private final Map<String, Finding> findings;
    private final String at;

    MakingRules(CauseCategory category, Map<String, Finding> findings, String at, Consumer<Invalid.Problem> problems) {
        this.category = category;
        this.findings = findings;
        this.at = at;
        this.problems = problems;
    }

    private void require(boolean holds, String field, String sentence) {
        if (!holds) {
            problems.accept(new Invalid.Problem(field, sentence));
        }
    }

    /** Checks what of the category is of format 2. */
    void check() {
        for (int k = 0; k < category.findings().size(); k++) {
            Finding f = category.findings().get(k);
            if (f.making() != null) {
                String here = at + ".findings[" + k + "]";
                words(f, f.making(), here);
                care(f, f.making(), here);
                order(f, f.making(), here);
                sides(f, here);
                require(isTouched(f), here, "let a cause touch '" + f.id() + "', or leave it out");
            }
        }
        for (int k = 0; k < category.causes().size(); k++) {
            cause(category.causes().get(k), at + ".causes[" + k + "]");
        }
        hints(category.hints());
    }

    private void words(Finding f, Making m, String here) {
        require(
                !m.label().isBlank()
                        && m.label().length() <= LABEL
                        && !m.label().endsWith("?")
                        && !m.label().endsWith("."),
                here + ".label",
                "give '" + f.id() + "' a label of at most " + LABEL
                        + " characters, without a question mark or full stop");
        require(
                m.act().isEmpty() || (m.act().length() <= SENTENCES && m.act().endsWith(".")),
                here + ".do",
                "end what is done for '" + f.id() + "' with a full stop, within " + SENTENCES + " characters");
        require(
                f.question().length() <= SENTENCES && f.question().endsWith("?"),
                here + ".question",
                "end the question of '" + f.id() + "' with a question mark, within " + SENTENCES + " characters");
    }

    private void care(Finding f, Making m, String here) {
        require(
                f.kind() == Finding.Kind.ANSWER || m.way() == Making.Way.MEASURE || m.way() == Making.Way.ASK,
                here + ".way",
                "let the reading '" + f.id() + "' be measured or asked for");
        require(
                !m.invasive() || m.way() != Making.Way.ASK,
                here + ".invasive",
                "asking for '" + f.id() + "' opens nothing: let it not be invasive, or choose another way");
        require(
                !m.invasive() || f.risk() != Risk.NONE,
                here + ".risk",
                "give '" + f.id() + "' a risk: it opens, stops or changes something");
        require(
                f.risk().compareTo(Risk.LOW) <= 0 || !m.cautions().isEmpty(),
                here + ".cautions",
                "give '" + f.id() + "' a caution: its risk is "
                        + f.risk().name().toLowerCase(Locale.ROOT));
        require(
                f.risk() != Risk.HIGH || !m.needs().isEmpty(),
                here + ".needs",
                "say what must be so before '" + f.id() + "': its risk is high");
        needs(m.needs(), here + ".needs");
    }

    private void needs(List<String> needs, String where) {
        for (String need : needs) {
            require(
                    NEEDS.contains(need),
                    where,
                    "choose a need that is known: " + String.join(", ", new TreeSet<>(NEEDS)));
        }
    }

    private void order(Finding f, Making m, String here) {
        for (int k = 0; k < m.unless().size(); k++) {
            Condition c = m.unless().get(k);
            Finding other = findings.get(c.finding());
            require(
                    other != null
                            && !c.finding().equals(f.id())
                            && !c.values().isEmpty()
                            && m.unless().indexOf(c) == k
                            && other.values().containsAll(c.values()),
                    here + ".unless[" + k + "]",
                    "name another finding of this category, once, and values that it has");
        }
        Finding narrowed = m.narrows() == null ? null : findings.get(m.narrows());
        require(
                m.narrows() == null
                        || (narrowed != null
                                && !m.narrows().equals(f.id())
                                && (narrowed.making() == null
                                        || narrowed.making().narrows() == null)),
                here + ".narrows",
                "name another finding of this category that narrows none itself");
    }

    private void sides(Finding f, String here) {
        require(
                !f.values().contains(Finding.OUTSIDE),
                here + ".values",
                "name the sides of '" + f.id() + "': below and above instead of outside");
        Limits l = f.limits();
        if (l == null) {
            return;
        }
        side(f, Finding.BELOW, l.low() != null, here);
        side(f, Finding.ABOVE, l.high() != null, here);
        if (l.nominal() != null) {
            nominal(f, l.nominal(), here + ".limits");
        }
    }

    private void side(Finding f, String value, boolean everywhere, String here) {
        Nominal nominal = f.limits() == null ? null : f.limits().nominal();
        boolean bounded = everywhere
                || (nominal != null
                        && (nominal.cases().values().stream().anyMatch(c -> bound(c, value) != null)
                                || bound(nominal, value) != null));
        require(
                bounded == f.values().contains(value),
                here + ".values",
                bounded
                        ? "name the value '" + value + "' of '" + f.id() + "': its limits have that side"
                        : "leave out the value '" + value + "' of '" + f.id() + "', or give the limit it is judged by");
    }

    private static @Nullable Double bound(Nominal.Case c, String side) {
        return side.equals(Finding.BELOW) ? c.low() : c.high();
    }

    private static @Nullable Double bound(Nominal n, String side) {
        return side.equals(Finding.BELOW) ? n.lowPercent() : n.highPercent();
    }

    private void nominal(Finding f, Nominal n, String here) {
        require(
                CASES.getOrDefault(n.by(), Set.of()).containsAll(n.cases().keySet())
                        && (n.by() == Nominal.By.NAMEPLATE || !n.cases().isEmpty()),
                here + ".cases",
                "name cases of '" + f.id() + "' that are known: "
                        + String.join(", ", new TreeSet<>(CASES.getOrDefault(n.by(), Set.of()))));
        n.cases()
                .forEach((name, c) -> require(
                        (c.low() != null || c.high() != null)
                                && (c.low() == null || c.high() == null || c.low() < c.high())
                                && !c.source().isBlank(),
                        here + ".cases." + name,
                        "give the case a bound, low less than high, and where it comes from"));
        require(
                n.by() != Nominal.By.NAMEPLATE
                        || (n.lowPercent() != null
                                && n.highPercent() != null
                                && n.lowPercent() < 0
                                && n.highPercent() > 0),
                here + ".percent",
                "give the percent of the nameplate for '" + f.id() + "': low below 0, high above 0");
    }

    private boolean isTouched(Finding f) {
        return category.causes().stream()
                .flatMap(c -> c.deviations().stream())
                .anyMatch(d -> d.finding().equals(f.id()));
    }

    private void cause(Cause c, String here) {
        for (String finding : c.confirmBy()) {
            require(
                    findings.containsKey(finding),
                    here + ".confirmBy",
                    "name a finding of this category: '" + finding + "' is not listed");
        }
        if (category.findings().stream().anyMatch(f -> f.making() != null)) {
            require(
                    (c.repair().risk() != Risk.HIGH && c.repair().reversible())
                            || !c.repair().needs().isEmpty(),
                    here + ".repair.needs",
                    "say what must be so before the repair of '" + c.id() + "': it is risky or cannot be undone");
            needs(c.repair().needs(), here + ".repair.needs");
        }
    }

    private void hints(Hints hints) {
        Set<String> seen = new HashSet<>();
        for (Feed feed : hints.feeds()) {
            Finding f = findings.get(feed.finding());
            require(
                    f != null
                            && (feed.value().isEmpty()
                                    ? f.limits() != null
                                    : f.values().contains(feed.value())),
                    at + ".feeds",
                    "name a finding and a value that it has for " + feed.sign() + ": '" + feed.finding() + "'");
            require(seen.add(feed.sign() + " " + feed.finding()), at + ".feeds", "name " + feed.sign() + " once");
        }
        for (QuantityWords words : hints.readings()) {
            Finding f = findings.get(words.finding());
            require(
                    f != null && f.kind() == Finding.Kind.READING,
                    at + ".feeds",
                    "name a reading of this category for these words: '" + words.finding() + "' is none");
            require(!words.any().isEmpty(), at + ".feeds", "give words for '" + words.finding() + "'");
        }
        complaints(hints);
        for (int k = 0; k < hints.phrases().size(); k++) {
            phrases(hints.phrases().get(k), at + ".phrases[" + k + "]");
        }
    }

    /** That nobody named a hazard says nothing: it is looked for. */
    private void complaints(Hints hints) {
        for (String id : hints.complaints()) {
            Finding f = findings.get(id);
            require(
                    f != null && f.kind() == Finding.Kind.ANSWER,
                    at + ".complaints",
                    "name a finding of this category that is an answer: '" + id + "' is none");
            require(
                    hints.feeds().stream()
                            .noneMatch(feed ->
                                    feed.finding().equals(id) && feed.sign().startsWith("hazard/")),
                    at + ".complaints",
                    "leave out '" + id + "': it tells a hazard, and that nobody named it does not rule it out");
        }
    }

    private void phrases(Phrases p, String here) {
        Finding f = findings.get(p.finding());
        require(
                f != null && (p.value().equals(Phrases.ASK) || f.values().contains(p.value())),
                here,
                "name a finding of this category, and a value that it has or 'ask'");
        for (String phrase : p.words().stream().map(Phrase::text).toList()) {
            int star = phrase.indexOf('*');
            require(
                    phrase.length() >= LEAST_PHRASE
                            && phrase.length() <= MOST_PHRASE
                            && (star < 0 || star == phrase.length() - 1),
                    here + ".words",
                    "give phrases of " + LEAST_PHRASE + " to " + MOST_PHRASE + " characters, a star only at the end");
        }
    }
}
