package org.benchtrail.ticket.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Advanced;
import org.benchtrail.core.method.desk.Closed;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.ticket.Work;
import org.jspecify.annotations.Nullable;

/**
 * A form of the job sheet, which has one save.
 *
 * @param name the last part of its address
 * @param groups in the order in which their facts are recorded
 * @param fields those of no group, by name; one that ends in a hyphen or a dot is followed by something else
 * @param about the field that tells one from another where the page has several of it; empty where it has one
 * @param move what its button 'and go on' asks for
 * @param drawn how it is shown; null where a template of its step shows it
 */
public record SheetForm(
        String name,
        List<FieldGroup<?>> groups,
        Set<String> fields,
        String about,
        Function<Posting, MoveFact> move,
        @Nullable DrawnForm drawn) {
    /** Of every form: the version of the sheet, the button, and the page to go back to. */
    private static final Set<String> COMMON = Set.of("version", "then", "back");

    /** The field of a problem that a form has as a whole. */
    public static final String WHOLE = "form";

    private static final char SEVERAL = '|';

    public static SheetForm of(String name, FieldGroup<?>... groups) {
        return new SheetForm(name, List.of(groups), Set.of(), "", SheetForm::onwards, null);
    }

    /** With groups that several forms have, read after its own. */
    public SheetForm with(List<FieldGroup<?>> more) {
        return new SheetForm(name, Stream.concat(groups.stream(), more.stream()).toList(), fields, about, move, drawn);
    }

    public SheetForm with(FieldGroup<?>... more) {
        return with(List.of(more));
    }

    /** With fields that belong to no group. */
    public SheetForm fields(String... names) {
        Set<String> all = Stream.concat(fields.stream(), Stream.of(names)).collect(Collectors.toUnmodifiableSet());
        return new SheetForm(name, groups, all, about, move, drawn);
    }

    /** One of several on the page, told from the others by that field. */
    public SheetForm about(String field) {
        return new SheetForm(name, groups, fields, field, move, drawn);
    }

    public SheetForm moving(Function<Posting, MoveFact> other) {
        return new SheetForm(name, groups, fields, about, other, drawn);
    }

    /** Of one fact, and shown below its step without a template. */
    public SheetForm drawn(String title, String hint, String button, DrawnForm.Asked... asked) {
        FieldGroup<?> group = groups.get(0);
        List<DrawnForm.Field> shown = Stream.of(asked).map(a -> a.of(group)).toList();
        return new SheetForm(name, groups, fields, about, move, new DrawnForm(group, title, hint, button, shown));
    }

    /** On from the step. */
    public static MoveFact onwards(Posting posting) {
        return posting.sheet().step() == Step.DOCUMENT ? new Closed() : new Advanced();
    }

    /**
     * What the form asks for.
     *
     * @throws Invalid naming every field that has to be put right
     */
    public Work read(PostedForm form, JobSheet sheet, FormContext context) {
        Posting posting = new Posting(form, sheet, context, new ArrayList<>(), new ArrayList<>());
        groups.forEach(group -> group.reader().accept(posting));
        form.done();
        if (form.text("then").equals("move")) {
            return new Work(posting.acts(), move.apply(posting), posting.after());
        }
        if (posting.acts().isEmpty()) {
            throw new Invalid(WHOLE, "Nothing new was filled in, so there is nothing to record.");
        }
        return new Work(posting.acts(), null);
    }

    /** Puts into the fields what the sheet says. */
    public void show(JobSheet sheet, FormContext context, FormValues values) {
        groups.forEach(group -> group.show(sheet, context, values));
    }

    /** What tells this form from every other one on the page: its name, and where there are several what it is about. */
    public String key(Map<String, List<String>> typed) {
        return about.isEmpty()
                ? name
                : name + SEVERAL + about + "=" + String.join("", typed.getOrDefault(about, List.of()));
    }

    /** The name of the form with that key. */
    public static String nameOf(String key) {
        int end = key.indexOf(SEVERAL);
        return end < 0 ? key : key.substring(0, end);
    }

    /** Of one of several: the field that tells them apart, an equals sign, and what stands in it. */
    public static Optional<String> aboutOf(String key) {
        int end = key.indexOf(SEVERAL);
        return end < 0 ? Optional.empty() : Optional.of(key.substring(end + 1));
    }

    /** Whether the form has a field of that name which is answered, and not only sent along. */
    public boolean isAnswer(String field) {
        return takes(field) && !COMMON.contains(field);
    }

    /** Whether the form has a field of that name. */
    public boolean takes(String field) {
        return COMMON.contains(field)
                || fields.stream().anyMatch(own -> isOrBegins(own, field))
                || groups.stream().anyMatch(group -> group.takes(field));
    }

    private static boolean isOrBegins(String own, String field) {
        boolean open = own.endsWith(".") || own.endsWith("-");
        return open ? field.startsWith(own) : field.equals(own);
    }
}
