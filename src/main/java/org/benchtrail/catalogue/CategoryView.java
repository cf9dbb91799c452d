package org.benchtrail.catalogue;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Backing;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Nominal;

/**
 * A category with every probability, where it comes from, and how many cases stand behind it.
 *
 * @param cases accepted cases behind the category, decayed and capped
 */
public record CategoryView(
        String id,
        String title,
        String label,
        double cases,
        Prior unlisted,
        List<CauseView> causes,
        List<FindingView> findings) {

    /** What a catalogue says where there is nothing to mind. */
    private static final String NOTHING = "none";

    /** How probable a cause is before anything is known; in [0, 1]. */
    public record Prior(double probability, String origin, double cases) {
        public String text() {
            return Percent.text(probability);
        }

        public String casesText() {
            return Percent.cases(cases);
        }
    }

    /** Probability of one value. */
    public record Share(String value, double probability) {
        public String text() {
            return value + " " + Percent.text(probability);
        }
    }

    /** What a cause makes of a finding. */
    public record DeviationRow(String finding, String question, List<Share> shares, String origin, double cases) {
        public String text() {
            return CategoryView.text(shares);
        }

        public String casesText() {
            return Percent.cases(cases);
        }
    }

    public record CauseView(
            String id,
            String name,
            Prior prior,
            String confirm,
            String repair,
            double minutes,
            double fixProbability,
            String caution,
            List<DeviationRow> tables) {
        public String minutesText() {
            return number(minutes);
        }

        public String fixText() {
            return Percent.text(fixProbability);
        }
    }

    /** @param limits in words; empty for an answer */
    public record FindingView(
            String id,
            String question,
            String kind,
            double minutes,
            String limits,
            List<Share> background,
            String origin,
            double cases) {
        public String text() {
            return CategoryView.text(background);
        }

        public String minutesText() {
            return number(minutes);
        }

        public String casesText() {
            return Percent.cases(cases);
        }
    }

    public String casesText() {
        return Percent.cases(cases);
    }

    static CategoryView of(Learned figures, Model model) {
        CauseCategory c = figures.category();
        Map<String, Finding> findings = c.findings().stream().collect(Collectors.toMap(Finding::id, f -> f));
        return new CategoryView(
                c.id(),
                c.title(),
                figures.label(),
                figures.cases(),
                prior(figures, model, Model.UNLISTED),
                c.causes().stream().map(x -> cause(x, figures, model, findings)).toList(),
                c.findings().stream().map(f -> finding(f, figures)).toList());
    }

    private static Prior prior(Learned figures, Model model, String cause) {
        return new Prior(
                model.prior(model.index(cause)),
                figures.priorOrigin(cause).words(),
                figures.support().prior(cause).cases());
    }

    private static CauseView cause(Cause x, Learned figures, Model model, Map<String, Finding> findings) {
        return new CauseView(
                x.id(),
                x.name(),
                prior(figures, model, x.id()),
                x.confirm(),
                x.repair().text(),
                x.repair().minutes(),
                x.repair().fixProbability(),
                x.caution().equals(NOTHING) ? "" : x.caution(),
                x.deviations().stream()
                        .map(d -> row(x, d, Objects.requireNonNull(findings.get(d.finding())), figures))
                        .toList());
    }

    private static DeviationRow row(Cause x, Deviation d, Finding f, Learned figures) {
        Backing backing = figures.support().table(x.id(), f.id());
        return new DeviationRow(
                f.id(),
                f.label(),
                shares(f, d.probabilities()),
                backing.origin().words(),
                backing.cases());
    }

    private static FindingView finding(Finding f, Learned figures) {
        Backing backing = figures.support().background(f.id());
        return new FindingView(
                f.id(),
                f.label(),
                f.kind().name().toLowerCase(Locale.ROOT),
                f.minutes(),
                f.limits() == null ? "" : words(f.limits()),
                shares(f, f.background()),
                backing.origin().words(),
                backing.cases());
    }

    private static List<Share> shares(Finding f, Map<String, Double> p) {
        return f.values().stream()
                .map(v -> new Share(v, Objects.requireNonNull(p.get(v))))
                .toList();
    }

    private static String words(Limits l) {
        if (l.nominal() != null) {
            return words(l, l.nominal());
        }
        String bounds = Stream.of(
                        l.low() == null ? "" : "at least " + number(l.low()),
                        l.high() == null ? "" : "at most " + number(l.high()))
                .filter(s -> !s.isEmpty())
                .collect(Collectors.joining(" and "));
        return bounds + " " + l.unit();
    }

    private static String words(Limits l, Nominal nominal) {
        if (nominal.by() == Nominal.By.NAMEPLATE) {
            return "the nameplate with " + nominal.lowPercent() + " % to +" + nominal.highPercent() + " %";
        }
        return nominal.cases().entrySet().stream()
                .map(c -> c.getKey() + ": " + words(l.in(c.getValue())))
                .collect(Collectors.joining("; "));
    }

    private static String text(List<Share> shares) {
        return shares.stream().map(Share::text).collect(Collectors.joining(", "));
    }

    private static String number(double x) {
        return x == Math.rint(x) ? String.valueOf((long) x) : String.valueOf(x);
    }
}
