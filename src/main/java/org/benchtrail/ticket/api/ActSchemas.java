package org.benchtrail.ticket.api;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.media.Discriminator;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.eclipse.microprofile.openapi.models.parameters.RequestBody;
import org.jspecify.annotations.Nullable;

/**
 * Describes every kind of fact in the OpenAPI document, made from the records themselves so that the two cannot drift apart:
 * the request body {@code Acts}, the schemas {@code Act} (what may be posted) and {@code Fact} (what a trail may hold), and one
 * schema for each kind under its record's name.
 */
public final class ActSchemas {
    private static final int LONGEST_TEXT = 20_000;
    private static final int LONGEST_LIST = 500;

    public void addTo(Components components) {
        FactKinds.all().forEach((name, kind) -> components.addSchema(kind.getSimpleName(), schema(name, kind)));
        components.addSchema("Fact", anyOf("One fact, told apart by its kind.", FactKinds.all()));
        Map<String, Class<? extends Fact>> acts = new java.util.TreeMap<>(FactKinds.all());
        acts.values().removeIf(FactKinds::isServerOnly);
        components.addSchema("Act", anyOf("One fact that may be posted, told apart by its kind.", acts));
        components.addRequestBody("Acts", body());
    }

    private static RequestBody body() {
        Schema several = OASFactory.createSchema()
                .addType(SchemaType.ARRAY)
                .items(reference("Act"))
                .minItems(1)
                .maxItems(ActsBody.MOST);
        Schema either = OASFactory.createSchema().anyOf(List.of(reference("Act"), several));
        return OASFactory.createRequestBody()
                .required(true)
                .description("One fact with its kind, or an array of facts that are recorded all or none.")
                .content(OASFactory.createContent()
                        .addMediaType(
                                "application/json", OASFactory.createMediaType().schema(either)));
    }

    private static Schema anyOf(String description, Map<String, Class<? extends Fact>> kinds) {
        Discriminator discriminator = OASFactory.createDiscriminator().propertyName("kind");
        Schema schema = OASFactory.createSchema().description(description).discriminator(discriminator);
        kinds.forEach((name, kind) -> {
            schema.addOneOf(reference(kind.getSimpleName()));
            discriminator.addMapping(name, "#/components/schemas/" + kind.getSimpleName());
        });
        return schema;
    }

    private static Schema reference(String name) {
        return OASFactory.createSchema().ref(name);
    }

    private static Schema schema(String name, Class<? extends Fact> kind) {
        Schema schema = OASFactory.createSchema()
                .addType(SchemaType.OBJECT)
                .description("What is left out is false, 0 or empty; what is missing is told field by field.")
                .additionalPropertiesBoolean(false)
                .addRequired("kind")
                .addProperty(
                        "kind",
                        OASFactory.createSchema().addType(SchemaType.STRING).constValue(name));
        for (RecordComponent component : kind.getRecordComponents()) {
            schema.addProperty(component.getName(), nullable(component, value(component.getGenericType())));
        }
        return schema;
    }

    private static Schema nullable(RecordComponent component, Schema value) {
        if (!component.getAnnotatedType().isAnnotationPresent(Nullable.class)) {
            return value;
        }
        Schema none = OASFactory.createSchema().addType(SchemaType.NULL);
        return value.getRef() == null
                ? value.addType(SchemaType.NULL)
                : OASFactory.createSchema().anyOf(List.of(value, none));
    }

    private static Schema value(Type type) {
        if (type instanceof ParameterizedType generic) {
            return container((Class<?>) generic.getRawType(), generic.getActualTypeArguments());
        }
        Class<?> plain = (Class<?>) type;
        if (plain == Fact.class) {
            return reference("Fact");
        }
        Schema schema = OASFactory.createSchema();
        if (plain.isEnum()) {
            names(plain).forEach(schema::addEnumeration);
            return schema.addType(SchemaType.STRING);
        }
        if (plain == Instant.class) {
            return schema.addType(SchemaType.STRING).format("date-time");
        }
        if (plain.isRecord()) {
            schema.addType(SchemaType.OBJECT).additionalPropertiesBoolean(false);
            for (RecordComponent component : plain.getRecordComponents()) {
                schema.addProperty(component.getName(), nullable(component, value(component.getGenericType())));
            }
            return schema;
        }
        if (plain == String.class) {
            return schema.addType(SchemaType.STRING).maxLength(LONGEST_TEXT);
        }
        return schema.addType(
                plain == boolean.class || plain == Boolean.class ? SchemaType.BOOLEAN : SchemaType.INTEGER);
    }

    private static Schema container(Class<?> raw, Type[] of) {
        Schema schema = OASFactory.createSchema();
        if (raw != Map.class) {
            return schema.addType(SchemaType.ARRAY)
                    .maxItems(LONGEST_LIST)
                    .items(value(of[0]))
                    .uniqueItems(raw == Set.class ? true : null);
        }
        schema.addType(SchemaType.OBJECT);
        if (!((Class<?>) of[0]).isEnum()) {
            return schema.additionalPropertiesSchema(value(of[1]));
        }
        names((Class<?>) of[0]).forEach(key -> schema.addProperty(key, value(of[1])));
        return schema.additionalPropertiesBoolean(false);
    }

    private static List<String> names(Class<?> ofEnum) {
        return Arrays.stream(ofEnum.getEnumConstants())
                .map(constant -> ((Enum<?>) constant).name())
                .toList();
    }
}
