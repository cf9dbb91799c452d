package org.benchtrail.platform.form;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.benchtrail.platform.Html;

/** Gives back what somebody typed whose sign-in has ended meanwhile, to be sent again after signing in. */
public final class SignedOut {
    private SignedOut() {}

    @CheckedTemplate(basePath = "")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance resend(String path, List<Field> fields);
    }

    /** A field that is kept to be sent again. */
    public record Field(String name, String value) {
        /** The name in words; empty for what nobody typed. */
        public String label() {
            return Set.of("version", "then", "shown").contains(name)
                    ? ""
                    : name.replaceAll("[.-]|(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
        }
    }

    /** @param path where the form goes */
    public static Response resend(String path, Map<String, List<String>> typed) {
        List<Field> fields = new ArrayList<>();
        typed.forEach((name, values) -> {
            if (!name.startsWith("csrf")) {
                values.forEach(value -> fields.add(new Field(name, value)));
            }
        });
        return Html.status(401, Templates.resend(path, fields));
    }
}
