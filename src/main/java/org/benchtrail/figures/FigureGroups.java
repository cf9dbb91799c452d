package org.benchtrail.figures;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.method.Category;
import org.benchtrail.platform.Option;
import org.benchtrail.site.TeamBook;
import org.jspecify.annotations.Nullable;

/**
 * Teams and causes that figures can be made of. A figure of a team of one or two would be one of persons, or tell each of two what the
 * other does: there is none of it.
 *
 * @param teams with enough people, by name
 * @param small how many teams have too few
 * @param causes of the catalogue in force, each under every key by which a closed ticket may name it
 */
record FigureGroups(List<TeamBook.Members> teams, int small, Map<String, FigureCause> causes) {
    /** So many people make a team that figures are shown of. */
    static final int LEAST_PEOPLE = 3;

    private static final String OTHERS = "others";
    private static final String KIND = "kind:";
    private static final String TEAM = "team:";
    private static final String CAUSE = "cause:";

    static FigureGroups of(List<TeamBook.Members> open, CatalogueVersion catalogue) {
        Map<String, FigureCause> causes = new LinkedHashMap<>();
        for (Category category : Category.values()) {
            Optional.ofNullable(catalogue.figures().get(category.catalogue()))
                    .ifPresent(learned -> learned.category().causes().forEach(c -> put(category, c, causes)));
        }
        List<TeamBook.Members> large =
                open.stream().filter(FigureGroups::isLarge).toList();
        return new FigureGroups(large, open.size() - large.size(), causes);
    }

    private static boolean isLarge(TeamBook.Members team) {
        return team.members().size() >= LEAST_PEOPLE;
    }

    private static void put(Category category, Cause cause, Map<String, FigureCause> causes) {
        List<String> ids = Stream.concat(Stream.of(cause.id()), cause.was().stream())
                .distinct()
                .toList();
        FigureCause made = new FigureCause(FigureCause.key(category, cause.id()), category, ids, cause.name());
        ids.forEach(id -> causes.putIfAbsent(FigureCause.key(category, id), made));
    }

    /**
     * @param asked id of a team; empty for all
     * @throws Invalid if the team has too few people
     */
    TeamBook.@Nullable Members team(String asked) {
        Optional<TeamBook.Members> found =
                teams.stream().filter(t -> String.valueOf(t.id()).equals(asked)).findFirst();
        if (found.isEmpty() && !asked.isEmpty()) {
            throw new Invalid(
                    "team",
                    "There is no team of at least " + LEAST_PEOPLE
                            + " people by that name: figures of fewer would be figures of persons.");
        }
        return found.orElse(null);
    }

    /** Null, which is any, where there is none of that key. */
    @Nullable
    FigureCause cause(String key) {
        return causes.get(key);
    }

    List<Option> teamOptions() {
        return teams.stream()
                .map(t -> new Option(String.valueOf(t.id()), t.name()))
                .toList();
    }

    /** What is said of teams that are not offered; empty if all are. */
    String smallInWords() {
        return small == 0
                ? ""
                : (small == 1 ? "1 team has" : small + " teams have") + " fewer than " + LEAST_PEOPLE
                        + " people: there are no figures of it, as they would be figures of persons.";
    }

    /**
     * Those that closed tickets name, by name.
     *
     * @param chosen one that is offered in any case
     */
    List<FigureCause> named(List<String> keys, @Nullable FigureCause chosen) {
        return Stream.concat(keys.stream().map(causes::get), Stream.ofNullable(chosen))
                .filter(c -> c != null)
                .distinct()
                .sorted(Comparator.comparing(FigureCause::words, String.CASE_INSENSITIVE_ORDER))
                .toList();
    }

    static List<Option> options(List<FigureCause> causes) {
        return causes.stream()
                .map(c -> new Option(c.key(), c.words() + " (" + Option.words(c.category()) + ")"))
                .toList();
    }

    /**
     * A second group, for the curve.
     *
     * @param period of it
     * @param others whether it is all that is not in the first
     */
    record Beside(String words, FigurePeriod period, boolean others) {}

    /** What can be drawn beside the group of a period: as it is, but for one part; or all others. */
    List<Option> besides(FigurePeriod period, List<FigureCause> named) {
        List<Option> options = new ArrayList<>();
        if (!period.isFiltered()) {
            return options;
        }
        options.add(new Option(OTHERS, "all others"));
        if (period.category() != null && period.cause() == null) {
            Stream.of(Category.values())
                    .filter(c -> c != period.category())
                    .forEach(c -> options.add(new Option(KIND + c.name(), Option.words(c))));
        }
        TeamBook.Members team = period.team();
        if (team != null) {
            teams.stream()
                    .filter(t -> t.id() != team.id())
                    .forEach(t -> options.add(new Option(TEAM + t.id(), "team " + t.name())));
        }
        FigureCause cause = period.cause();
        if (cause != null) {
            named.stream()
                    .filter(c -> !c.equals(cause) && (period.category() == null || c.category() == period.category()))
                    .forEach(c -> options.add(new Option(CAUSE + c.key(), "cause: " + c.words())));
        }
        return options;
    }

    /** The one that was asked for; empty where it is none of those offered. */
    Optional<Beside> beside(String asked, FigurePeriod period, List<FigureCause> named) {
        return besides(period, named).stream()
                .filter(o -> o.value().equals(asked))
                .findFirst()
                .map(o -> asked.equals(OTHERS)
                        ? new Beside("all others", period.unfiltered(), true)
                        : beside(asked, period));
    }

    private Beside beside(String asked, FigurePeriod period) {
        FigurePeriod other = period;
        if (asked.startsWith(KIND)) {
            other = period.of(Category.valueOf(asked.substring(KIND.length())), period.team(), period.cause());
        } else if (asked.startsWith(TEAM)) {
            Predicate<TeamBook.Members> same = t -> asked.equals(TEAM + t.id());
            other = period.of(
                    period.category(), teams.stream().filter(same).findFirst().orElseThrow(), period.cause());
        } else {
            other = period.of(period.category(), period.team(), causes.get(asked.substring(CAUSE.length())));
        }
        return new Beside(other.group(), other, false);
    }
}
