package org.benchtrail.knowledge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.platform.NotFound;
import org.jspecify.annotations.Nullable;

/** The forms of a known cause: fields are named {@code act.field}, so that one page can hold all of them. */
public final class ActForm {
    private final Map<String, List<String>> values = new HashMap<>();
    private final Map<String, String> errors = new HashMap<>();
    private String open = "";

    /** What the fields hold before anybody types. */
    static ActForm of(CauseText text) {
        ActForm form = new ActForm();
        for (String act : List.of("correct", "split")) {
            form.put(act + ".category", text.category().name());
            form.put(act + ".shows", text.shows());
            form.put(act + ".apart", text.apart());
            form.put(act + ".cure", text.cure());
        }
        form.put("correct.title", text.title());
        form.put("correct.causeId", text.causeId() == null ? "" : text.causeId());
        return form;
    }

    private void put(String name, String value) {
        values.put(name, List.of(value));
    }

    /** What was typed into one of the forms, and what is wrong with it. */
    ActForm typed(String act, Map<String, List<String>> typed, List<Invalid.Problem> problems) {
        values.putAll(typed);
        problems.forEach(p -> errors.putIfAbsent(act + "." + p.field(), p.sentence()));
        open = act;
        return this;
    }

    /**
     * The act that a form asks for.
     *
     * @throws Invalid naming the fields that have to be put right, without the act's name before them
     */
    static KnowledgeAct read(String act, Map<String, List<String>> typed) {
        Reader form = new Reader(act, typed);
        return switch (act) {
            case "confirm" -> new KnowledgeAct.Confirm(form.text("note"));
            case "flag" -> new KnowledgeAct.RaiseFlag(form.text("reason"));
            case "correct" -> new KnowledgeAct.Correct(form.causeText(), form.text("reason"));
            case "retire" -> new KnowledgeAct.Retire(form.text("reason"));
            case "bring-back" -> new KnowledgeAct.BringBack(form.text("reason"));
            case "merge" -> new KnowledgeAct.Merge(form.number("into"), form.text("reason"));
            case "split" ->
                new KnowledgeAct.Split(
                        form.causeText(), typed.getOrDefault("split.cases", List.of()), form.text("reason"));
            default -> throw new NotFound("form '" + act + "'");
        };
    }

    private record Reader(String act, Map<String, List<String>> typed) {
        String text(String field) {
            return typed.getOrDefault(act + "." + field, List.of()).stream()
                    .findFirst()
                    .orElse("");
        }

        long number(String field) {
            String digits = text(field).strip();
            if (!digits.matches("\\d{1,18}")) {
                throw new Invalid(field, "Write the number of the known cause, as its page shows it.");
            }
            return Long.parseLong(digits);
        }

        CauseText causeText() {
            return new CauseText(
                    text("title"), category(), text("causeId"), text("shows"), text("apart"), text("cure"));
        }

        private Category category() {
            for (Category category : Category.values()) {
                if (category.name().equals(text("category"))) {
                    return category;
                }
            }
            throw new Invalid("category", "Choose the kind of trouble.");
        }
    }

    public String value(String name) {
        return values.getOrDefault(name, List.of()).stream().findFirst().orElse("");
    }

    public boolean is(String name, @Nullable String option) {
        return values.getOrDefault(name, List.of()).contains(option);
    }

    public boolean wrong(String name) {
        return errors.containsKey(name);
    }

    /** What is wrong with a field; empty if nothing is. */
    public String error(String name) {
        return errors.getOrDefault(name, "");
    }

    /** Whether the form of that act was just sent, and so is shown unfolded. */
    public boolean unfolded(String act) {
        return open.equals(act);
    }
}
