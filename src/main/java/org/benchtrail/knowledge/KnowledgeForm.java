package org.benchtrail.knowledge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;

/** The forms of a known cause: the kind of the act is the group of its fields, so that one page can hold all of them. */
final class KnowledgeForm {
    private KnowledgeForm() {}

    /** What the fields hold before anybody types: a second one that is split off begins with the words of the first. */
    static FormValues values(CauseText text) {
        return new FormValues()
                .put("correct.text", text)
                .put("split.text", text)
                .set("split.text.title", null)
                .set("split.text.causeId", null);
    }

    /**
     * The act that a form asks for.
     *
     * @throws Invalid naming the fields that have to be put right
     */
    static KnowledgeAct read(String kind, PostedForm form) {
        if (!KnowledgeAct.isKind(kind)) {
            throw new NotFound("form '" + kind + "'");
        }
        if (kind.equals("merge") && form.number("merge.into").isEmpty()) {
            form.refuse("merge.into", "Write the number of the known cause, as its page shows it.");
        }
        Map<String, Object> known = new HashMap<>(Map.of("kind", kind));
        form.optional(kind + ".text", CauseText.class).ifPresent(text -> known.put("text", text));
        form.done();
        var act = form.read(kind, KnowledgeAct.class, known);
        form.done();
        return act.orElseThrow();
    }

    /** Problems that the act itself found, each at its field of the form. */
    static List<Problem> atFields(String kind, List<Problem> problems) {
        String group = kind + ".";
        return problems.stream()
                .map(p -> p.field().startsWith(group) ? p : new Problem(group + p.field(), p.sentence()))
                .toList();
    }
}
