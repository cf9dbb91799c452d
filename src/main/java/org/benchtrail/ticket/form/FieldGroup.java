package org.benchtrail.ticket.form;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.platform.form.FormValues;

/**
 * A group of fields, such as {@code onset.known} and {@code onset.when}, and the fact whose components they are named after. Fields
 * of a group that is there once for each of some entries have the entry's number too: {@code settle-12.note}.
 *
 * @param name before the dot, or the hyphen
 * @param reader what the group becomes when its form is sent
 * @param shown puts in what its fields hold before anybody types, in the order in which one stands before the other
 */
public record FieldGroup<F extends Fact>(String name, Class<F> kind, Consumer<Posting> reader, List<Showing> shown) {
    /** What somebody looks at when the form is shown. */
    interface Showing {
        void put(JobSheet sheet, FormContext context, FormValues values);
    }

    /** What a form offers by itself, by component: an answer that follows from what is recorded already. */
    public interface Offer {
        Map<String, String> of(JobSheet sheet, FormContext context);
    }

    /** A fact that is recorded if any field of the group is filled in. */
    public static <F extends Fact> FieldGroup<F> given(String name, Class<F> kind) {
        return given(name, kind, posting -> Map.of());
    }

    /** As {@link #given(String, Class)}, with components that the form does not ask for. */
    public static <F extends Fact> FieldGroup<F> given(
            String name, Class<F> kind, Function<Posting, Map<String, ?>> known) {
        return special(name, kind, posting -> posting.record(name, kind, known.apply(posting)))
                .when(posting -> posting.form().given(name));
    }

    /** The fact that the form is about. */
    public static <F extends Fact> FieldGroup<F> required(String name, Class<F> kind) {
        return required(name, kind, posting -> Map.of());
    }

    /** As {@link #required(String, Class)}, with components that the form does not ask for. */
    public static <F extends Fact> FieldGroup<F> required(
            String name, Class<F> kind, Function<Posting, Map<String, ?>> known) {
        return special(name, kind, posting -> posting.record(name, kind, known.apply(posting)));
    }

    /** A fact of which the latest counts as long as it lasts: shown, and recorded if it is filled in and says something else. */
    public static <F extends Fact> FieldGroup<F> answer(String name, Class<F> kind) {
        return answer(name, kind, posting -> Map.of());
    }

    /** As {@link #answer(String, Class)}, with components that follow from how the form asks. */
    public static <F extends Fact> FieldGroup<F> answer(
            String name, Class<F> kind, Function<Posting, Map<String, ?>> known) {
        return unshown(name, kind, known).showing(sheet -> sheet.inForce(kind).map(StandingFact::fact));
    }

    private static <F extends Fact> FieldGroup<F> unshown(
            String name, Class<F> kind, Function<Posting, Map<String, ?>> known) {
        FieldGroup<F> answer = special(
                name,
                kind,
                posting -> posting.form()
                        .read(name, kind, known.apply(posting))
                        .filter(fact -> !stands(fact, kind, posting.sheet()))
                        .ifPresent(posting::add));
        return answer.when(posting -> posting.form().given(name));
    }

    /**
     * As {@link #answer}, for a yes that says what, or a no that says why, each in a line of its own: the line that is filled in
     * answers. The fields of the no have a group of their own, such as {@code nomaker.text} beside {@code maker.text}.
     *
     * @param component that is true with a yes
     * @param isYes reads it
     * @param standing what is shown
     */
    public static <F extends Fact> List<FieldGroup<?>> eitherLine(
            String name,
            Class<F> kind,
            String component,
            Predicate<F> isYes,
            Function<JobSheet, Optional<F>> standing) {
        String no = "no" + name;
        FieldGroup<F> yes = unshown(name, kind, posting -> {
                    if (posting.form().given(no)) {
                        posting.form()
                                .refuse(
                                        no + ".text",
                                        "Fill in one of the two lines: what it is, or why there is none.");
                    }
                    return Map.of(component, true);
                })
                .showing(sheet -> standing.apply(sheet).filter(isYes));
        FieldGroup<F> why = unshown(no, kind, posting -> Map.of(component, false))
                .showing(sheet -> standing.apply(sheet).filter(isYes.negate()));
        return List.of(yes, why);
    }

    /** Whether the same was said last, and nothing was done to the device since. */
    private static <F extends Fact> boolean stands(F fact, Class<F> kind, JobSheet sheet) {
        return sheet.inForce(kind)
                .filter(n -> n.fact().equals(fact))
                .filter(n -> fact.lasts() != Lasts.ROUND || n.isAfter(sheet.lastWork()))
                .isPresent();
    }

    /** A fact about each of some entries, recorded for those where a component is filled in. */
    public static <F extends Fact, A extends Fact> FieldGroup<F> ofEach(
            String name,
            Class<F> kind,
            String component,
            Function<JobSheet, List<StandingFact<A>>> entries,
            Function<StandingFact<A>, Map<String, ?>> known) {
        return special(name, kind, posting -> {
            for (StandingFact<A> entry : entries.apply(posting.sheet())) {
                String group = name + "-" + entry.entry();
                if (posting.form().has(group + "." + component)) {
                    posting.record(group, kind, known.apply(entry));
                }
            }
        });
    }

    /** A group whose way to its fact is its own. */
    public static <F extends Fact> FieldGroup<F> special(String name, Class<F> kind, Consumer<Posting> reader) {
        return new FieldGroup<>(name, kind, reader, List.of());
    }

    /** Read only under a condition. */
    public FieldGroup<F> when(Predicate<Posting> condition) {
        Consumer<Posting> conditional = posting -> {
            if (condition.test(posting)) {
                reader.accept(posting);
            }
        };
        return new FieldGroup<>(name, kind, conditional, shown);
    }

    /** Read only if one of these components is filled in. */
    public FieldGroup<F> ifFilled(String... components) {
        return when(posting ->
                Stream.of(components).anyMatch(component -> posting.form().has(name + "." + component)));
    }

    /** Read in another way, and shown as before. */
    public FieldGroup<F> readBy(Consumer<Posting> other) {
        return new FieldGroup<>(name, kind, other, shown);
    }

    /** With something to hold in its fields, a record or a map, before what they hold so far is put over it. */
    public FieldGroup<F> showing(Function<JobSheet, Optional<?>> first) {
        return showing((sheet, context, values) -> first.apply(sheet).ifPresent(held -> values.put(name, held)));
    }

    /** As {@link #showing(Function)}, in the fields of a group that is there once for each of some entries. */
    public FieldGroup<F> showingEach(Function<JobSheet, Map<Integer, Map<String, String>>> first) {
        return showing((sheet, context, values) ->
                first.apply(sheet).forEach((entry, held) -> values.put(name + "-" + entry, held)));
    }

    /**
     * With answers that the form offers by itself. They count once the sender goes on, or says anything else in the group; saving
     * what was filled in elsewhere takes none of them.
     */
    public FieldGroup<F> offering(Offer offer) {
        return when(posting -> posting.form().text("then").equals("move") || !isOnlyOffered(posting, offer))
                .showing((sheet, context, values) -> values.put(name, offer.of(sheet, context)));
    }

    private boolean isOnlyOffered(Posting posting, Offer offer) {
        Map<String, String> offered = offer.of(posting.sheet(), posting.context());
        return posting.form().filled(name + ".").stream()
                .allMatch(
                        component -> posting.form().text(name + "." + component).equals(offered.get(component)));
    }

    private FieldGroup<F> showing(Showing first) {
        return new FieldGroup<>(
                name,
                kind,
                reader,
                Stream.concat(Stream.of(first), shown.stream()).toList());
    }

    void show(JobSheet sheet, FormContext context, FormValues values) {
        shown.forEach(source -> source.put(sheet, context, values));
    }

    /** Whether that is the name of a field of this group: a component, or a key of one that is a map, or a part of a record. */
    public boolean takes(String field) {
        int dot = field.indexOf('.');
        if (dot < 0 || !field.substring(0, dot).replaceFirst("-\\d+$", "").equals(name)) {
            return false;
        }
        String[] path = field.substring(dot + 1).split("\\.", 2);
        return Stream.of(kind.getRecordComponents())
                .filter(component -> component.getName().equals(path[0]))
                .map(RecordComponent::getType)
                .anyMatch(type -> path.length == 1 || type == Map.class || hasComponent(type, path[1]));
    }

    private static boolean hasComponent(Class<?> type, String name) {
        return type.isRecord()
                && Stream.of(type.getRecordComponents())
                        .anyMatch(component -> component.getName().equals(name));
    }
}
