package org.benchtrail.bench;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.core.bench.Result;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Option;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The bench for programs. */
@Path("/api/bench")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Bench")
public class BenchApi {
    private final CurrentActor current;

    BenchApi(CurrentActor current) {
        this.current = current;
    }

    /**
     * A calculation and what it asks for.
     *
     * @param example values that can be sent as they stand
     */
    public record Description(
            String id,
            int version,
            String trade,
            String title,
            String question,
            List<FieldDescription> input,
            Object example) {}

    /**
     * One field of the input.
     *
     * @param type number, whole, tick, choice, text, numbers or rows
     * @param unit empty for a pure number, a choice or a text
     * @param options the choices, each with the value to send; else empty
     * @param fields what each row holds, for type rows; else empty
     */
    public record FieldDescription(
            String name,
            String label,
            String unit,
            String hint,
            String type,
            boolean required,
            List<Option> options,
            List<FieldDescription> fields) {

        static FieldDescription of(InputField asked) {
            return new FieldDescription(
                    asked.name(),
                    asked.label(),
                    asked.unit(),
                    asked.hint(),
                    asked.kind().name().toLowerCase(Locale.ROOT),
                    asked.required(),
                    asked.options(),
                    asked.fields().stream().map(FieldDescription::of).toList());
        }
    }

    /** The result, with the version of the calculation that gave it. */
    public record Answer(String calculation, int version, Result result) {}

    @GET
    @Operation(summary = "The calculations, by trade, with what each asks for and an example")
    @Blocking
    public List<Description> calculations() {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        return Bench.all().stream().map(BenchApi::description).toList();
    }

    @GET
    @Path("{id}")
    @Operation(summary = "One calculation with what it asks for and an example")
    @Blocking
    public Description calculation(@RestPath String id) {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        return description(BenchPage.find(id));
    }

    @POST
    @Path("{id}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Calculate; nothing is stored. Refused values are answered 422 with their fields")
    @Blocking
    public Answer calculate(@RestPath String id, @Nullable JsonNode input) {
        Permissions.require(Permission.SEE_TICKETS, current.actor());
        Calculation<?> calculation = BenchPage.find(id);
        TypedValues typed = JsonInput.read(InputField.of(calculation.inputType()), input);
        return new Answer(calculation.id(), calculation.version(), InputForm.calculate(calculation, typed));
    }

    private static Description description(Calculation<?> calculation) {
        return new Description(
                calculation.id(),
                calculation.version(),
                calculation.trade().name().toLowerCase(Locale.ROOT),
                calculation.title(),
                calculation.question(),
                InputField.of(calculation.inputType()).stream()
                        .map(FieldDescription::of)
                        .toList(),
                calculation.example());
    }
}
