package org.benchtrail.platform.form;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.problem.TypedField;

/** Gives back what somebody typed whose sign-in has ended meanwhile, to be sent again after signing in. */
public final class SignedOut {
    private SignedOut() {}

    @CheckedTemplate(basePath = "")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance resend(String path, List<TypedField> fields);
    }

    /** @param path where the form goes */
    public static Response resend(String path, Map<String, List<String>> typed) {
        return Html.status(401, Templates.resend(path, TypedField.of(typed)));
    }
}
