package org.benchtrail.knowledge;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.jspecify.annotations.Nullable;

/** What may be done to a known cause. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(value = KnowledgeAct.Confirm.class, name = "confirm"),
    @JsonSubTypes.Type(value = KnowledgeAct.Flag.class, name = "flag"),
    @JsonSubTypes.Type(value = KnowledgeAct.Correct.class, name = "correct"),
    @JsonSubTypes.Type(value = KnowledgeAct.Retire.class, name = "retire"),
    @JsonSubTypes.Type(value = KnowledgeAct.BringBack.class, name = "bring-back"),
    @JsonSubTypes.Type(value = KnowledgeAct.Merge.class, name = "merge"),
    @JsonSubTypes.Type(value = KnowledgeAct.Split.class, name = "split")
})
public sealed interface KnowledgeAct {
    /** What is asked of whoever does it. */
    Permission permission();

    /** Found true again, outside a ticket. */
    record Confirm(@Nullable String note) implements KnowledgeAct {
        public Confirm {
            note = note == null ? "" : optional("note", note);
        }

        @Override
        public Permission permission() {
            return Permission.TEND_KNOWLEDGE;
        }
    }

    /** It is wrong, or no longer true. */
    record Flag(String reason) implements KnowledgeAct {
        public Flag {
            reason = required("reason", reason, "Say what is wrong with it.");
        }

        @Override
        public Permission permission() {
            return Permission.TEND_KNOWLEDGE;
        }
    }

    /** Other words in place of these; a flag is thereby answered. */
    record Correct(CauseText text, @Nullable String reason) implements KnowledgeAct {
        public Correct {
            new Invalid.Collector()
                    .require(text != null, "text", "Write what it is to say.")
                    .throwIfAny();
            reason = reason == null ? "" : optional("reason", reason);
        }

        @Override
        public Permission permission() {
            return Permission.TEND_KNOWLEDGE;
        }
    }

    record Retire(String reason) implements KnowledgeAct {
        public Retire {
            reason = required("reason", reason, "Say why it is no longer to be shown.");
        }

        @Override
        public Permission permission() {
            return Permission.CURATE_KNOWLEDGE;
        }
    }

    record BringBack(String reason) implements KnowledgeAct {
        public BringBack {
            reason = required("reason", reason, "Say why it is to be shown again.");
        }

        @Override
        public Permission permission() {
            return Permission.CURATE_KNOWLEDGE;
        }
    }

    /** It is the same as another: its cases and confirmations go there. */
    record Merge(long into, String reason) implements KnowledgeAct {
        public Merge {
            reason = required("reason", reason, "Say why the two are the same.");
        }

        @Override
        public Permission permission() {
            return Permission.CURATE_KNOWLEDGE;
        }
    }

    /**
     * It is two: a second one is made.
     *
     * @param text of the second one
     * @param cases numbers of the tickets that belong to the second one
     */
    record Split(CauseText text, @Nullable List<String> cases, String reason) implements KnowledgeAct {
        public Split {
            new Invalid.Collector()
                    .require(text != null, "text", "Write what the second one says.")
                    .throwIfAny();
            cases = cases == null ? List.of() : List.copyOf(cases);
            reason = required("reason", reason, "Say what tells the two apart.");
        }

        @Override
        public Permission permission() {
            return Permission.CURATE_KNOWLEDGE;
        }
    }

    private static String required(String field, @Nullable String text, String whatToDo) {
        String clean = text == null ? "" : optional(field, text);
        new Invalid.Collector().require(!clean.isEmpty(), field, whatToDo).throwIfAny();
        return clean;
    }

    private static String optional(String field, String text) {
        String clean = PlainText.paragraph(text);
        new Invalid.Collector()
                .require(clean.length() <= CauseText.PARAGRAPH, field, "Shorten this to 4,000 characters.")
                .require(PlainText.isText(clean), field, PlainText.WHAT_TO_DO)
                .throwIfAny();
        return clean;
    }
}
